package evenpair.certificates;

import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The page that QR codes lead to; it reads the code from its own address. */
@Controller
@AllowedFor(Caller.ANYONE)
class CheckPageController {
  @GetMapping({"/check", "/check/{code}"})
  String page() {
    return "forward:/public/check.html";
  }
}
