package ovenproof.cli;

import picocli.CommandLine.IVersionProvider;

/** What the jar's manifest says of its version. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    String version = Ovenproof.class.getPackage().getImplementationVersion();
    return new String[] {"ovenproof " + (version == null ? "(built from source)" : version)};
  }
}
