package violations.pure.tolerance;

import org.springframework.stereotype.Component;

/** Breaks the rule on purpose: cannot be used without a container. */
@Component
class IsABean {}
