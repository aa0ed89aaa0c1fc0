package propcap.spark;

import propcap.study.SeasonEngine;

/** Reaches a Spark cluster; found where the Spark jar is. */
public final class SparkProvider implements SeasonEngine.Provider {
  @Override
  public SeasonEngine at(String address) throws InterruptedException {
    MasterAddress.check(address);
    return SparkEngine.at(address);
  }
}
