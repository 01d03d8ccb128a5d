/*
 * Energy at the battery of many vehicles over one cycle through a loss model of motor, gears and inverter, in plain C: the
 * yardstick for the same loop in the library.
 *
 * loss FILE REPETITIONS reads doubles from FILE: the number of pieces and of vehicles; the model; duration, first and last speed of every
 * piece; the lists of constant, linear and quadratic forces and of masses. It prints the nanoseconds a vehicle and the sum of
 * all energies. The numbers of the model stand here and in loss.bench.ts.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec * 1e9 + t.tv_nsec;
}

/* What the model is made of. Read at run time, so that the compiler cannot fold it. */
struct drivetrain {
  double ratio, mesh, spin, kc, ki, kw, c, inverter, standby, torque, power;
};

static double braked(const struct drivetrain *d, double p, double w) {
  double shaft = d->torque * w < d->power ? d->torque * w : d->power, least = -(shaft + d->spin * w) / d->mesh;
  return p > least ? p : least;
}

__attribute__((noinline)) static double battery_power(const struct drivetrain *d, double p, double v) {
  if (v <= 0) return 0;
  double w = v * d->ratio;
  double s = (p > 0 ? p / d->mesh : braked(d, p, w) * d->mesh) + d->spin * w, t = s / w;
  double e = s + d->kc * t * t + w * (d->ki + d->kw * w * w) + d->c;
  return d->standby + (e > 0 ? e / d->inverter : e * d->inverter);
}

static double part(const struct drivetrain *d, double k, double b, double c, double v0, double v1, double dt) {
  double m = (v0 + v1) / 2, o = (v1 - v0) / 2 * 0.5773502691896258, v = m - o, u = m + o;
  double first = battery_power(d, v * (k + v * (b + c * v)), v), second = battery_power(d, u * (k + u * (b + c * u)), u);
  return (first + second) * dt / 2;
}

__attribute__((noinline)) static double drive(const struct drivetrain *d, const double *p, size_t pieces, double a,
                                              double b, double c, double m) {
  double sum = 0;
  for (size_t i = 0; i < pieces; i++, p += 3) {
    double dt = p[0], v0 = p[1], v1 = p[2], k = a + m * (v1 - v0) / dt;
    if ((k + v0 * (b + c * v0)) * (k + v1 * (b + c * v1)) >= 0) {
      sum += part(d, k, b, c, v0, v1, dt);
      continue;
    }
    /* The force rises with speed, so that it has one root in between. */
    double half = -(b + sqrt(b * b - 4 * c * k)) / 2, r = k / half;
    sum += part(d, k, b, c, v0, r, dt * (r - v0) / (v1 - v0));
    sum += part(d, k, b, c, r, v1, dt * (v1 - r) / (v1 - v0));
  }
  return sum;
}

int main(int argc, char **argv) {
  FILE *file = argc == 3 ? fopen(argv[1], "rb") : NULL;
  double head[2];
  struct drivetrain d;
  if (file == NULL || fread(head, sizeof(double), 2, file) != 2 || fread(&d, sizeof d, 1, file) != 1) return 1;
  size_t pieces = (size_t)head[0], vehicles = (size_t)head[1], size = 3 * pieces + 4 * vehicles;
  double *data = malloc(size * sizeof(double)), *out = malloc(vehicles * sizeof(double));
  if (data == NULL || out == NULL || fread(data, sizeof(double), size, file) != size) return 1;
  fclose(file);
  const double *a = data + 3 * pieces, *b = a + vehicles, *c = b + vehicles, *m = c + vehicles;
  long repetitions = atol(argv[2]);
  double start = now(), sum = 0;
  for (long r = 0; r < repetitions; r++) {
    for (size_t v = 0; v < vehicles; v++) out[v] = drive(&d, data, pieces, a[v], b[v], c[v], m[v]);
  }
  double used = now() - start;
  for (size_t v = 0; v < vehicles; v++) sum += out[v];
  printf("%.3f %.17g\n", used / (double)repetitions / (double)vehicles, sum);
  return 0;
}
