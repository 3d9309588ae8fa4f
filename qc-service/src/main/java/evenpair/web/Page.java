package evenpair.web;

import java.util.List;
import java.util.function.Function;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/**
 * A part of a list as JSON carries it.
 *
 * @param next path and query of the next part, with every other parameter as it was; null at the
 *     end
 */
public record Page<T>(List<T> items, String next) {
  public Page {
    items = List.copyOf(items);
  }

  /**
   * To be called while the request is handled: the link is made from its address.
   *
   * @param read up to {@link Paging#rowsToRead()} items
   * @param cursor what {@code after} must be to go on behind an item
   */
  public static <T> Page<T> of(List<T> read, Paging paging, Function<T, String> cursor) {
    if (read.size() <= paging.limit()) {
      return new Page<>(read, null);
    }
    List<T> items = read.subList(0, paging.limit());
    String last = cursor.apply(items.get(items.size() - 1));
    String next =
        ServletUriComponentsBuilder.fromCurrentRequest()
            .scheme(null)
            .host(null)
            .port(null)
            .userInfo(null)
            .replaceQueryParam("after", last)
            .replaceQueryParam("limit", paging.limit())
            .build()
            .encode()
            .toUriString();
    return new Page<>(items, next);
  }
}
