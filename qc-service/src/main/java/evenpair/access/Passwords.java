package evenpair.access;

import evenpair.web.Refusal;
import java.nio.charset.StandardCharsets;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/** Passwords: what they must be, and slow hashes of them. */
@Component
class Passwords {
  private static final int SHORTEST = 12;

  /** What the hash method looks at. */
  private static final int MOST_BYTES = 72;

  private final PasswordEncoder encoder =
      PasswordEncoderFactories.createDelegatingPasswordEncoder();

  /** Checked where there is no account, so that the answer takes as long. */
  private final String nobodys = encoder.encode(Secrets.password());

  /**
   * @return the hash to keep
   * @throws Refusal 400 if the password is too short or too long
   */
  String hash(String field, String password) {
    boolean fits =
        password != null
            && password.codePointCount(0, password.length()) >= SHORTEST
            && password.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES;
    if (!fits) {
      String expected = "at least " + SHORTEST + " characters, at most " + MOST_BYTES + " bytes";
      throw new Refusal(400, "invalid-field", "A password must have " + expected + ".")
          .with("field", field)
          .with("expected", expected);
    }
    return encoder.encode(password);
  }

  /**
   * @param hash null if there is no account or it has no password; takes as long as with one
   */
  boolean matches(String password, String hash) {
    String tried = password == null ? "" : password;
    boolean fits = tried.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES;
    boolean same = encoder.matches(fits ? tried : "", hash == null ? nobodys : hash);
    return same && fits && hash != null;
  }
}
