package ovenproof.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.apache.tomcat.util.http.fileupload.impl.FileCountLimitExceededException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import ovenproof.desk.Desk;
import ovenproof.desk.Keys;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;

/** What every page has, and what becomes of every failure: a sentence and the next step. */
@ControllerAdvice(basePackages = "ovenproof")
class PageAdvice {
  private static final Logger LOG = LoggerFactory.getLogger(PageAdvice.class);

  /** Leaves room for a form's own fields, so that the number named can be sent from any page. */
  private static final int FIELDS_BESIDE_FILES = 20;

  private final Desk desk;

  PageAdvice(Desk desk) {
    this.desk = desk;
  }

  @ModelAttribute
  void common(Model model, HttpServletRequest request) {
    model.addAttribute("who", Who.of(request));
    model.addAttribute("everyone", Who.all());
    model.addAttribute("here", request.getRequestURI());
    model.addAttribute("stages", Stage.shown());
    model.addAttribute("herePath", Stage.pathOf(request.getRequestURI()));
    model.addAttribute("key", Keys.next(desk.clock()));
    model.addAttribute("problems", java.util.Map.of());
    model.addAttribute("typed", java.util.Map.of());
    model.addAttribute("conflict", null);
  }

  @ExceptionHandler(InputException.class)
  @ResponseStatus(HttpStatus.NOT_FOUND)
  String input(InputException failure, Model model, HttpServletRequest request) {
    return page(
        model,
        request,
        "That cannot be shown",
        failure.problems().stream().map(Object::toString).toList(),
        "Go back, or begin at Home.");
  }

  @ExceptionHandler(OutsideException.class)
  @ResponseStatus(HttpStatus.SERVICE_UNAVAILABLE)
  String outside(OutsideException failure, Model model, HttpServletRequest request) {
    LOG.warn("outside failure", failure);
    return page(
        model,
        request,
        "Something outside the program failed",
        List.of(String.valueOf(failure.getMessage())),
        "Go back: your browser keeps what you typed. Send it again when the cause is mended.");
  }

  @ExceptionHandler(MaxUploadSizeExceededException.class)
  @ResponseStatus(HttpStatus.CONTENT_TOO_LARGE)
  String tooLarge(MaxUploadSizeExceededException failure, Model model, HttpServletRequest request) {
    if (isCount(failure)) {
      return page(
          model,
          request,
          "Too many files at once",
          List.of(
              "A form may bring "
                  + ServerConfiguration.PARTS
                  + " files and fields at once; this one brought more. Nothing of it was kept."),
          "Send the files in parts of at most "
              + (ServerConfiguration.PARTS - FIELDS_BESIDE_FILES)
              + "; whole campaigns go in by “ovenproof serve --import DIR”.");
    }
    return page(
        model,
        request,
        "The file is too large",
        List.of("More than 500 MB were sent at once. Nothing of it was kept."),
        "Split the log or export it smaller; whole campaigns go in by “ovenproof serve --import DIR”.");
  }

  /** Whether the number of parts was refused, not their bytes: the server's own cause says it. */
  private static boolean isCount(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof FileCountLimitExceededException) {
        return true;
      }
    }
    return false;
  }

  @ExceptionHandler(org.springframework.web.servlet.resource.NoResourceFoundException.class)
  @ResponseStatus(HttpStatus.NOT_FOUND)
  String missing(Model model, HttpServletRequest request) {
    return page(
        model,
        request,
        "There is no such page",
        List.of("Found nothing at this address."),
        "Begin at Home.");
  }

  @ExceptionHandler(Exception.class)
  @Nullable String fault(
      Exception fault,
      Model model,
      HttpServletRequest request,
      jakarta.servlet.http.HttpServletResponse response) {
    if (fault instanceof org.springframework.web.ErrorResponse known) {
      response.setStatus(known.getStatusCode().value());
      return page(
          model,
          request,
          "The request was not understood",
          List.of("The server expected something else here."),
          "Go back and try again.");
    }
    if (response.isCommitted()) {
      // The browser went away in the middle of a file: nobody is there to read a page.
      LOG.debug("the browser left at {}", request.getRequestURI(), fault);
      return null;
    }
    LOG.error("fault at {}", request.getRequestURI(), fault);
    response.setStatus(500);
    return page(
        model,
        request,
        "A fault in the program itself",
        List.of("Nothing was changed. The log of the program says more."),
        "Go back: your browser keeps what you typed.");
  }

  private String page(
      Model model, HttpServletRequest request, String title, List<String> problems, String next) {
    common(model, request);
    model.addAttribute("title", title);
    model.addAttribute("sentences", problems);
    model.addAttribute("next", next);
    return "web/problem";
  }
}
