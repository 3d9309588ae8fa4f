package evenpair.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.util.DigestUtils;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.ViewControllerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * The screens' files. A browser asks each time whether its copy is still good, by a digest of the
 * content: files in a jar may carry one and the same date in every version.
 */
@Configuration(proxyBeanMethods = false)
class StaticFiles implements WebMvcConfigurer {
  @Override
  public void addResourceHandlers(ResourceHandlerRegistry registry) {
    serve(registry, "/webjars/**", "classpath:/META-INF/resources/webjars/");
    serve(registry, "/**", "classpath:/static/");
  }

  @Override
  public void addViewControllers(ViewControllerRegistry registry) {
    registry.addViewController("/").setViewName("forward:/index.html");
  }

  private static void serve(ResourceHandlerRegistry registry, String pattern, String location) {
    registry
        .addResourceHandler(pattern)
        .addResourceLocations(location)
        .setCacheControl(CacheControl.noCache())
        .setUseLastModified(false)
        .setEtagGenerator(StaticFiles::digest);
  }

  private static String digest(Resource file) {
    try (InputStream in = file.getInputStream()) {
      return DigestUtils.md5DigestAsHex(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
