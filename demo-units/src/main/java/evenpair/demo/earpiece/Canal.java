package evenpair.demo.earpiece;

/**
 * The air between nozzle and microphone: a rigid tube driven at one end, closed by the microphone
 * at the other. Against the pressure that the same volume would have without length it multiplies
 * by x/sin x, x = k·L with a complex wave number: x = π·(f/f_mode)·(1 − jη). Its first length mode,
 * a half wave, lies at f_mode = c/(2L): near 8 kHz with an IEC 60318-4 simulator at the usual
 * insertion (common practice, no source). A deeper insertion shortens L and raises f_mode.
 *
 * @param modeHz f_mode at nominal insertion, Hz
 * @param loss η, above 0: the mode rises to about 1/(η·shape) and the second one is weaker
 */
record Canal(double modeHz, double loss) {
  Canal {
    if (!(modeHz > 0) || !(loss > 0)) {
      throw new IllegalArgumentException(
          "length mode and loss must be above 0, were " + modeHz + " Hz, " + loss);
    }
  }

  /**
   * @param depth insertion as a fraction by which the mode is raised, above −1; 0 is nominal
   */
  Phasors applyTo(Phasors response, double depth) {
    for (int i = 0; i < response.size(); i++) {
      double real = Math.PI * response.hz(i) / (modeHz * (1 + depth));
      double imaginary = -real * loss;
      if (real > 0) {
        // sin(x + jy) = sin x · cosh y + j · cos x · sinh y; one exponential gives both, the
        // library's are slow.
        double up = Math.exp(imaginary);
        double cosh = (up + 1 / up) / 2;
        double sinh = (up - 1 / up) / 2;
        response
            .multiply(i, real, imaginary)
            .divide(i, Math.sin(real) * cosh, Math.cos(real) * sinh);
      }
    }
    return response;
  }
}
