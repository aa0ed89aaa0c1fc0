package propcap.cli.record;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import propcap.cli.kit.Program;
import propcap.cli.kit.Scenarios;
import propcap.files.scenario.CropBook;
import propcap.study.BadQuestionException;

/** What is known of a crop, and from where. */
@Command(
    name = "crops",
    description = "Lists the crops that Propcap brings; shows one with its sources and days.",
    mixinStandardHelpOptions = true)
public final class CropsCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "NAME",
      arity = "0..1",
      description = "The crop to show. Default: a list of all.")
  private @Nullable String name;

  @Option(
      names = "--at",
      paramLabel = "TEMPERATURE",
      converter = Temperature.class,
      description = "How long it takes there, such as 65F or 18C. Default: as in the list.")
  private @Nullable Double at;

  @Option(
      names = "--crops",
      paramLabel = "FILE",
      description = "A crop list of your own. Default: the one that Propcap brings.")
  private @Nullable Path file;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    Path own = file;
    CropBook book =
        own == null ? CropBook.ofPropcap() : CropBook.read(own, Scenarios.doubted(spec));
    lines(book).forEach(spec.commandLine().getOut()::println);
    return Program.DONE;
  }

  private List<String> lines(CropBook book) throws BadQuestionException {
    String asked = name;
    if (asked == null) {
      return CropLines.table(book, at);
    }
    return CropLines.entry(
        book.named(asked)
            .orElseThrow(
                () ->
                    new BadQuestionException(
                        "no crop '" + asked + "' in the list; " + book.nearest(asked))),
        at);
  }
}
