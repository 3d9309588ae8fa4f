package evenpair.inspections;

import evenpair.products.Products;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/** Puts the fixture's products in the place of the plant's, and a store that can be told to be full before the real one. */
@TestConfiguration(proxyBeanMethods = false)
class FixtureSeams {
  @Bean
  @Primary
  Products fixtureProducts() {
    return new FixtureProducts();
  }
}
