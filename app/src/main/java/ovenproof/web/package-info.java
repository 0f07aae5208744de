/**
 * The web application's frame: start, layout, security, errors, and what every page shares.
 *
 * <p><b>Where to start.</b> {@link ovenproof.web.WebServer} starts it; {@link
 * ovenproof.web.WebConfiguration} wires services and safety; {@link ovenproof.web.Workbench} gives
 * pages a campaign with its measurements and verdict. The pages themselves live with their stage.
 *
 * <p><b>The trap.</b> A form that is refused must come back with everything that was typed; a form
 * that is sent twice must change things once.
 *
 * <p>Knows no page.
 */
@NullMarked
package ovenproof.web;

import org.jspecify.annotations.NullMarked;
