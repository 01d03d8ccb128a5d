/*
 * Energy at the wheels of many vehicles over one cycle, in plain C: the yardstick for the same loop in the library.
 *
 * udds FILE REPETITIONS reads doubles from FILE: the number of pieces, of vehicles, of pieces with padding, the largest
 * speed; four integrals for every piece and the padding; for every piece by rising acceleration: acceleration, first and last
 * speed, duration; then the lists of constant, linear and quadratic forces and of masses. It prints, for each of two ways to write the loop, the
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

/* Of the driving and the braking energy of a piece, the size of the smaller one; k is the constant force with m*a. */
static double smaller(double k, double b, double c, double from, double to, double dt) {
  double disc = b * b - 4 * c * k;
  if (!(disc > 0)) return 0;
  double half = -(b + (b < 0 ? -1 : 1) * sqrt(disc)) / 2, one = half / c, two = k / half;
  int has1 = (one - from) * (to - one) > 0, has2 = (two - from) * (to - two) > 0;
  if (!has1 && !has2) return 0;
  double cut[3] = {has1 ? one : two, to, to};
  if (has1 && has2) {
    int first = (one < two) == (from < to);
    cut[0] = first ? one : two;
    cut[1] = first ? two : one;
  }
  double plus = 0, minus = 0, v = from;
  for (int i = 0; i < 3; i++) {
    double n = cut[i], t = dt * (n - v) / (to - from);
    double e = t * (v + n) * (k / 2 + c * (v * v + n * n) / 4) + b * t * (v * v + v * n + n * n) / 3;
    if (e > 0) plus += e;
    else minus -= e;
    v = n;
  }
  return plus < minus ? plus : minus;
}

/* What cancels within pieces: looked for only among those that decelerate about as the vehicle does by itself. */
static double hidden(const double *sorted, size_t pieces, double vmax, double a, double b, double c, double m) {
  double lin = b * vmax, quad = c * vmax * vmax, sum = 0;
  double least = a + (lin < 0 ? lin : 0) + (quad < 0 ? quad : 0), most = a + (lin > 0 ? lin : 0) + (quad > 0 ? quad : 0);
  size_t low = 0, high = pieces;
  double from = -most / m, to = -least / m;
  while (low < high) {
    size_t middle = (low + high) / 2;
    if (sorted[4 * middle] < from) low = middle + 1;
    else high = middle;
  }
  for (; low < pieces && sorted[4 * low] <= to; low++) {
    const double *p = sorted + 4 * low;
    double k = a + m * p[0];
    if (b >= 0 && c >= 0 && (k + p[1] * (b + c * p[1])) * (k + p[2] * (b + c * p[2])) >= 0) continue;
    sum += smaller(k, b, c, p[1], p[2], p[3]);
  }
  return sum;
}

/* One piece after the other, driving and braking told apart by the sign. */
__attribute__((noinline)) static void plain(const double *k, const double *sorted, size_t pieces, double vmax, double a,
                                            double b, double c, double m, double *driving, double *braking) {
  double plus = 0, minus = 0, part = hidden(sorted, pieces, vmax, a, b, c, m);
  for (size_t i = 0; i < pieces; i++, k += 4) {
    double e = a * k[0] + b * k[1] + (c * k[2] + m * k[3]);
    if (e > 0) plus += e;
    else minus += e;
  }
  *driving = plus + part;
  *braking = minus - part;
}

/* As the library does it: two pieces a step, the sum and the sum of the sizes. The list of k ends with an even number. */
__attribute__((noinline)) static void paired(const double *k, const double *sorted, size_t pieces, double vmax, double a,
                                             double b, double c, double m, double *driving, double *braking) {
  double net = 0, size = 2 * hidden(sorted, pieces, vmax, a, b, c, m);
  for (size_t i = 0; i < pieces; i += 2, k += 8) {
    double one = a * k[0] + b * k[1] + (c * k[2] + m * k[3]);
    double two = a * k[4] + b * k[5] + (c * k[6] + m * k[7]);
    net += one + two;
    size += fabs(one) + fabs(two);
  }
  *driving = (net + size) / 2;
  *braking = (net - size) / 2;
}

typedef void (*loop)(const double *, const double *, size_t, double, double, double, double, double, double *, double *);

int main(int argc, char **argv) {
  FILE *file = argc == 3 ? fopen(argv[1], "rb") : NULL;
  double head[4];
  if (file == NULL || fread(head, sizeof(double), 4, file) != 4) return 1;
  size_t pieces = (size_t)head[0], vehicles = (size_t)head[1], padded = (size_t)head[2];
  double vmax = head[3];
  size_t size = 4 * padded + 4 * pieces + 4 * vehicles;
  double *data = malloc(size * sizeof(double)), *out = malloc(2 * vehicles * sizeof(double));
  if (data == NULL || out == NULL || fread(data, sizeof(double), size, file) != size) return 1;
  fclose(file);
  const double *sorted = data + 4 * padded, *a = sorted + 4 * pieces, *b = a + vehicles, *c = b + vehicles, *m = c + vehicles;
  long repetitions = atol(argv[2]);
  loop loops[2] = {plain, paired};
  for (int l = 0; l < 2; l++) {
    double start = now(), sum = 0;
    for (long r = 0; r < repetitions; r++) {
      for (size_t v = 0; v < vehicles; v++) loops[l](data, sorted, pieces, vmax, a[v], b[v], c[v], m[v], out + v, out + vehicles + v);
    }
    double used = now() - start;
    for (size_t v = 0; v < 2 * vehicles; v++) sum += out[v];
    printf("%.3f %.17g\n", used / (double)repetitions / (double)vehicles, sum);
  }
  return 0;
}
