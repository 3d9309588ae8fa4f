package evenpair.stations;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Configuration;

@Configuration
@EnableConfigurationProperties({StationSettings.class, TrustSettings.class})
class StationConfiguration {}
