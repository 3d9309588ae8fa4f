package evenpair.web.jobs;

import java.time.Clock;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.transaction.support.TransactionTemplate;

@Configuration(proxyBeanMethods = false)
class JobConfiguration {
  @Bean
  JobRunner jobRunner(
      JobTable table, TransactionTemplate transaction, Clock clock, ObjectProvider<JobKind> kinds) {
    return new JobRunner(table, transaction, clock, kinds.orderedStream().toList());
  }
}
