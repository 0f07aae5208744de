package ovenproof.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;

/** Routes of the frame: who sits here, what time it is, errors outside of pages. */
@Controller
class FrameController {

  @PostMapping("/who")
  @MayUse(MayUse.Audience.OWNER)
  String who(@RequestParam Who who, @RequestParam String back, HttpServletResponse response) {
    response.addHeader(
        HttpHeaders.SET_COOKIE,
        ResponseCookie.from(Who.COOKIE, who.word())
            .path("/")
            .httpOnly(true)
            .sameSite("Strict")
            .maxAge(java.time.Duration.ofDays(365))
            .build()
            .toString());
    // Only a path of this desk: never somewhere else.
    return "redirect:" + (back.matches("/[A-Za-z0-9._/-]*") && !back.startsWith("//") ? back : "/");
  }

  /** The desk's clock, with which a device finds its own offset. */
  @GetMapping("/clock")
  @ResponseBody
  @MayUse(MayUse.Audience.ANYONE)
  String clock() {
    return String.valueOf(System.currentTimeMillis());
  }

  @RequestMapping("/error")
  @MayUse(MayUse.Audience.ANYONE)
  String error(HttpServletRequest request, Model model) {
    Object status = request.getAttribute("jakarta.servlet.error.status_code");
    boolean forbidden = Integer.valueOf(403).equals(status);
    boolean large = Integer.valueOf(413).equals(status);
    boolean absent = Integer.valueOf(404).equals(status);
    model.addAttribute(
        "title",
        large
            ? "Too much at once"
            : forbidden ? "Not accepted" : absent ? "No such page" : "That did not work");
    model.addAttribute(
        "sentences",
        java.util.List.of(
            large
                ? tooMuch(request)
                : forbidden
                    ? "The page was too old, or the request came from elsewhere. Nothing was"
                        + " changed."
                    : absent
                        ? "Nothing is at this address of the desk."
                        : "The server answered with " + status + ". Nothing was changed."));
    model.addAttribute(
        "next",
        large
            ? "Send fewer files at a time, or export a long log in parts; whole campaigns go in by"
                + " their folder."
            : absent
                ? "Check the address, or begin at Home."
                : "Go back: your browser keeps what you typed. Reload the page, then send it"
                    + " again.");
    return "web/problem";
  }

  /** A body within the limit of bytes was refused for the number of its parts. */
  private static String tooMuch(HttpServletRequest request) {
    long bytes = request.getContentLengthLong();
    String type = String.valueOf(request.getContentType());
    boolean files = type.startsWith("multipart/");
    return !files || (bytes >= 0 && bytes <= UploadLimit.MOST_BYTES)
        ? "A form may bring "
            + ServerConfiguration.PARTS
            + " files and fields at once; this one brought more, or too long a text. Nothing of it"
            + " was kept."
        : "More than 500 MB were sent at once. Nothing of it was kept.";
  }
}
