package ovenproof.cli;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.spi.ContextAwareBase;

/**
 * Data goes to stdout; what the program has to say about itself goes to stderr, from WARN up. Found
 * by the logging library as a service; written out, because reading it from XML costs a fifth of a
 * second at every start.
 */
public final class LogToStderr extends ContextAwareBase implements Configurator {

  @Override
  public ExecutionStatus configure(LoggerContext context) {
    PatternLayoutEncoder line = new PatternLayoutEncoder();
    line.setContext(context);
    line.setPattern("%d{HH:mm:ss} %-5level %logger{20}: %msg%n");
    line.start();
    ConsoleAppender<ILoggingEvent> stderr = new ConsoleAppender<>();
    stderr.setContext(context);
    stderr.setTarget("System.err");
    stderr.setEncoder(line);
    stderr.start();
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.setLevel(Level.WARN);
    root.addAppender(stderr);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }
}
