package evenpair.inspections;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Configuration;

@Configuration
@EnableConfigurationProperties(InspectionSettings.class)
class InspectionConfiguration {}
