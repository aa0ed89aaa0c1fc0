package propcap.spark;

import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerApplicationEnd;
import org.apache.spark.scheduler.SparkListenerExecutorAdded;
import propcap.study.EngineException;
import propcap.study.SeasonEngine;
import propcap.study.SeasonsAsked;
import propcap.study.TooLargeException;
import scala.reflect.ClassTag$;

/**
 * Seasons on a cluster's executors. What is asked is sent to each executor once; a task is a block
 * of season numbers; what comes of them is taken here as each block comes in. Where an executor
 * dies, Spark runs its blocks again elsewhere, and they come out the same.
 */
final class SparkEngine implements SeasonEngine {
  /** Blocks for each core: enough that none waits long for another's last. Planning default. */
  private static final int BLOCKS_A_CORE = 8;

  /** An executor has the outcomes of a block in its memory until all of it is done. */
  private static final int MOST_IN_A_BLOCK = 50;

  /** After that a grower should be told that nobody takes the work. Planning default. */
  private static final int SECONDS_FOR_AN_EXECUTOR = 60;

  private final String address;
  private final JavaSparkContext spark;

  private SparkEngine(String address, JavaSparkContext spark) {
    this.address = address;
    this.spark = spark;
  }

  /** The engine of a cluster, when its first executor is there. */
  static SparkEngine at(String address) throws InterruptedException {
    SparkConf conf = new SparkConf().setMaster(address).setIfMissing("spark.app.name", "Propcap");
    // Options of Java's such as -Dspark.executor.memory=2g, and spark-submit's, stand before these.
    conf.setIfMissing("spark.executor.memory", "512m");
    conf.setIfMissing("spark.ui.enabled", "false");
    // Each block is read and let go as it comes: their sum needs no limit.
    conf.setIfMissing("spark.driver.maxResultSize", "0");
    if (!conf.contains("spark.jars")) {
      conf.setJars(JavaSparkContext.jarOfClass(SparkEngine.class));
    }
    SparkEngine engine;
    try {
      engine = new SparkEngine(address, new JavaSparkContext(conf));
    } catch (RuntimeException e) {
      throw new EngineException(
          "--on "
              + address
              + ": the master does not take Propcap in. Is it a Spark master of version "
              + org.apache.spark.package$.MODULE$.SPARK_VERSION()
              + ", which this jar speaks with? Spark says: "
              + firstLine(e),
          e);
    }
    try {
      engine.awaitExecutor();
    } catch (RuntimeException | InterruptedException e) {
      engine.close();
      throw e;
    }
    return engine;
  }

  private void awaitExecutor() throws InterruptedException {
    CountDownLatch known = new CountDownLatch(1);
    spark
        .sc()
        .addSparkListener(
            new SparkListener() {
              @Override
              public void onExecutorAdded(SparkListenerExecutorAdded executor) {
                known.countDown();
              }

              @Override
              public void onApplicationEnd(SparkListenerApplicationEnd refused) {
                known.countDown();
              }
            });
    // One that came before the listener is looked for; the machine that asks is listed too.
    boolean isKnown =
        spark.sc().getExecutorMemoryStatus().size() > 1
            || known.await(SECONDS_FOR_AN_EXECUTOR, TimeUnit.SECONDS);
    if (spark.sc().isStopped()) {
      throw new EngineException(
          "--on "
              + address
              + ": the cluster's workers could not start what Propcap runs on; their logs say why");
    }
    if (!isKnown) {
      throw new EngineException(
          "--on "
              + address
              + ": no worker of the cluster has taken the work within "
              + SECONDS_FOR_AN_EXECUTOR
              + " s. Are there workers, with a free core and "
              + spark.getConf().get("spark.executor.memory")
              + " of memory, and can they reach this machine?");
    }
  }

  @Override
  public Opened open(SeasonsAsked asked, int threads) {
    Broadcast<SeasonsSent> sent = spark.broadcast(new SeasonsSent(asked));
    return new Opened() {
      @Override
      public void run(List<Integer> which, int from, int to, Taking taking)
          throws InterruptedException {
        SparkEngine.this.run(new SeasonBlock(sent, List.copyOf(which)), from, to, taking);
      }

      @Override
      public void close() {
        if (!spark.sc().isStopped()) {
          sent.destroy();
        }
      }
    };
  }

  private void run(SeasonBlock block, int from, int to, Taking taking) throws InterruptedException {
    if (from >= to) {
      return;
    }
    List<Integer> numbers = IntStream.range(from, to).boxed().toList();
    int blocks =
        Math.max(
            Math.min(numbers.size(), BLOCKS_A_CORE * spark.defaultParallelism()),
            (numbers.size() + MOST_IN_A_BLOCK - 1) / MOST_IN_A_BLOCK);
    try {
      spark
          .sc()
          .runJob(
              spark.parallelize(numbers, blocks).rdd(),
              block,
              new BlockTaken(taking),
              ClassTag$.MODULE$.apply(List.class));
    } catch (Exception e) {
      throw told(e);
    }
  }

  /** What stopped a job, which Scala throws whether declared or not; the rest is called off. */
  private RuntimeException told(Exception e) throws InterruptedException {
    if (!spark.sc().isStopped()) {
      spark.sc().cancelAllJobs();
    }
    if (e instanceof InterruptedException interrupted) {
      throw interrupted;
    }
    if (Thread.currentThread().isInterrupted()) {
      // Spark, which is told of the end too, was quicker.
      throw new InterruptedException();
    }
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof TooLargeException tooLarge) {
        return tooLarge;
      }
      if (cause instanceof IllegalStateException ours && e != cause) {
        return ours;
      }
    }
    return new EngineException(
        "the cluster at " + address + " gave up; nothing was written. Spark says: " + firstLine(e),
        e);
  }

  private static String firstLine(Throwable e) {
    String message = e.getMessage();
    return message == null ? e.getClass().getSimpleName() : message.lines().findFirst().orElse("");
  }

  @Override
  public void close() {
    spark.close();
  }
}
