package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

class PageTests {
  @BeforeEach
  void aRequest() {
    MockHttpServletRequest request = new MockHttpServletRequest("GET", "/api/inspections");
    request.setQueryString("batch=SW-2647&after=a&limit=2");
    request.setParameter("batch", "SW-2647");
    RequestContextHolder.setRequestAttributes(new ServletRequestAttributes(request));
  }

  @AfterEach
  void noRequest() {
    RequestContextHolder.resetRequestAttributes();
  }

  @Test
  void linksToTheNextPartAndKeepsTheOtherParameters() {
    Page<String> page = Page.of(List.of("b", "c", "d"), Paging.of("a", 2), item -> "after " + item);
    assertThat(page.items()).containsExactly("b", "c");
    assertThat(page.next()).isEqualTo("/api/inspections?batch=SW-2647&after=after%20c&limit=2");
  }

  @Test
  void hasNoLinkAtTheEnd() {
    assertThat(Page.of(List.of("b", "c"), Paging.of("a", 2), item -> item).next()).isNull();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -1, 501})
  void refusesALimitOutOfRange(int limit) {
    assertThatThrownBy(() -> Paging.of(null, limit))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("1 to 500");
  }

  @Test
  void takesTheLargestLimitAndAUsualOne() {
    assertThat(Paging.of("", 500)).isEqualTo(new Paging(null, 500));
    assertThat(Paging.of(null, null).limit()).isEqualTo(Paging.USUAL);
  }
}
