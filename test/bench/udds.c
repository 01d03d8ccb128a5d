/*
 * Energy at the wheels of many vehicles over one cycle, in plain C: the yardstick for the same loop in the library.
 *
 * udds FILE REPETITIONS reads doubles from FILE: the number of pieces, the number of vehicles, four integrals a piece, then
 * the lists of constant, linear and quadratic forces and of masses. It prints, for each of two ways to write the loop, the
 * nanoseconds a vehicle and the sum of all driving and braking energies.
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

/* One piece after the other, driving and braking told apart by the sign. */
__attribute__((noinline)) static void plain(const double *k, size_t pieces, double a, double b, double c, double m,
                                            double *driving, double *braking) {
  double plus = 0, minus = 0;
  for (size_t i = 0; i < pieces; i++, k += 4) {
    double e = a * k[0] + b * k[1] + (c * k[2] + m * k[3]);
    if (e > 0) plus += e;
    else minus += e;
  }
  *driving = plus;
  *braking = minus;
}

/* As the library does it: two pieces a step, the sum and the sum of the sizes. */
__attribute__((noinline)) static void paired(const double *k, size_t pieces, double a, double b, double c, double m,
                                             double *driving, double *braking) {
  double net = 0, size = 0;
  for (size_t i = 0; i < pieces; i += 2, k += 8) {
    double one = a * k[0] + b * k[1] + (c * k[2] + m * k[3]);
    double two = a * k[4] + b * k[5] + (c * k[6] + m * k[7]);
    net += one + two;
    size += fabs(one) + fabs(two);
  }
  *driving = (net + size) / 2;
  *braking = (net - size) / 2;
}

typedef void (*loop)(const double *, size_t, double, double, double, double, double *, double *);

int main(int argc, char **argv) {
  FILE *file = argc == 3 ? fopen(argv[1], "rb") : NULL;
  double head[2];
  if (file == NULL || fread(head, sizeof(double), 2, file) != 2) return 1;
  size_t pieces = (size_t)head[0], vehicles = (size_t)head[1];
  size_t size = 4 * pieces + 4 * vehicles;
  double *data = malloc(size * sizeof(double)), *out = malloc(2 * vehicles * sizeof(double));
  if (data == NULL || out == NULL || fread(data, sizeof(double), size, file) != size) return 1;
  fclose(file);
  const double *a = data + 4 * pieces, *b = a + vehicles, *c = b + vehicles, *m = c + vehicles;
  long repetitions = atol(argv[2]);
  loop loops[2] = {plain, paired};
  for (int l = 0; l < 2; l++) {
    double start = now(), sum = 0;
    for (long r = 0; r < repetitions; r++) {
      for (size_t v = 0; v < vehicles; v++) loops[l](data, pieces, a[v], b[v], c[v], m[v], out + v, out + vehicles + v);
    }
    double used = now() - start;
    for (size_t v = 0; v < 2 * vehicles; v++) sum += out[v];
    printf("%.3f %.17g\n", used / (double)repetitions / (double)vehicles, sum);
  }
  return 0;
}
