/**
 * The command line: small verbs on plain files.
 *
 * <p><b>Where to start.</b> {@link ovenproof.cli.Ovenproof} lists the verbs; each is one class that
 * parses, calls one service and prints. Data on stdout, progress and problems on stderr, {@code
 * --json} everywhere.
 *
 * <p><b>The trap.</b> Only {@code serve} and {@code demo} may touch Spring, inside the method that
 * starts it: every other verb must be there in a fraction of a second.
 */
@NullMarked
package ovenproof.cli;

import org.jspecify.annotations.NullMarked;
