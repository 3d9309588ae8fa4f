package evenpair.inspections;

import evenpair.captures.CaptureStore;
import evenpair.products.GoldenResponses;
import evenpair.products.Products;
import evenpair.stations.Stations;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;

/**
 * Puts the fixture's products in the place of the plant's, and a disk that can be full under the
 * real capture store, stations that can be blocked or studied before the real ones.
 */
@TestConfiguration(proxyBeanMethods = false)
class FixtureSeams {
  @Bean
  @Primary
  Products fixtureProducts() {
    return new FixtureProducts();
  }

  @Bean
  @Primary
  GoldenResponses fixtureGoldens() {
    return new FixtureGoldens();
  }

  @Bean
  @Primary
  SwitchableStore switchableStore(@Qualifier("fileCaptureStore") CaptureStore real) {
    return new SwitchableStore(real);
  }

  @Bean
  @Primary
  SwitchableStations switchableStations(@Qualifier("stationDesk") Stations real) {
    return new SwitchableStations(real);
  }
}
