/*
 * Energy at the wheels of many vehicles over one cycle, in plain C: the yardstick for the same loop in the library.
 *
 * udds FILE REPETITIONS reads doubles from FILE: the number of pieces, of vehicles, the largest speed; then three lists of the
 * pieces by rising acceleration: acceleration and three integrals; first and last speed, duration; the sums of four integrals
 * over the pieces before, with one more for the end; then the lists of constant, linear and quadratic forces and of masses. It
 * prints the nanoseconds a vehicle and the sum of all driving and braking energies.
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

/* First piece that accelerates at least so much. */
static size_t first_at_least(const double *rows, size_t pieces, double acceleration) {
  size_t low = 0, high = pieces;
  while (low < high) {
    size_t middle = (low + high) / 2;
    if (rows[4 * middle] < acceleration) low = middle + 1;
    else high = middle;
  }
  return low;
}

/* As the library does it: pieces that surely brake or drive by their sums, those in between one by one. */
__attribute__((noinline)) static void wheel_energy(const double *rows, const double *ends, const double *before,
                                                   size_t pieces, double vmax, double a, double b, double c, double m,
                                                   double *driving, double *braking) {
  double lin = b * vmax, quad = c * vmax * vmax;
  double least = a + (lin < 0 ? lin : 0) + (quad < 0 ? quad : 0), most = a + (lin > 0 ? lin : 0) + (quad > 0 ? quad : 0);
  size_t from = m > 0 ? first_at_least(rows, pieces, -most / m) : 0;
  size_t to = m > 0 ? first_at_least(rows, pieces, -least / m) : pieces;
  double change = m > 0 ? fmax(fabs(least), fabs(most)) / m : vmax, spread = change * (fabs(b) + 2 * vmax * fabs(c));
  double net = 0, size = 0, hidden = 0;
  for (size_t i = from; i < to; i++) {
    const double *p = rows + 4 * i, *q = ends + 3 * i;
    double k = a + m * p[0], e = k * p[1] + (b * p[2] + c * p[3]);
    net += e;
    size += fabs(e);
    if (fabs(e) < spread * p[1]) hidden += smaller(k, b, c, q[0], q[1], q[2]);
  }
  const double *s = before + 4 * from, *t = before + 4 * to, *w = before + 4 * pieces;
  double below = a * s[0] + b * s[1] + c * s[2] + m * s[3];
  double above = a * (w[0] - t[0]) + b * (w[1] - t[1]) + c * (w[2] - t[2]) + m * (w[3] - t[3]);
  *driving = (above > 0 ? above : 0) + (size + net) / 2 + hidden;
  *braking = (below < 0 ? below : 0) + (net - size) / 2 - hidden;
}

int main(int argc, char **argv) {
  FILE *file = argc == 3 ? fopen(argv[1], "rb") : NULL;
  double head[3];
  if (file == NULL || fread(head, sizeof(double), 3, file) != 3) return 1;
  size_t pieces = (size_t)head[0], vehicles = (size_t)head[1];
  double vmax = head[2];
  size_t size = 11 * pieces + 4 + 4 * vehicles;
  double *data = malloc(size * sizeof(double)), *out = malloc(2 * vehicles * sizeof(double));
  if (data == NULL || out == NULL || fread(data, sizeof(double), size, file) != size) return 1;
  fclose(file);
  const double *ends = data + 4 * pieces, *before = ends + 3 * pieces, *a = before + 4 * (pieces + 1), *b = a + vehicles, *c = b + vehicles;
  const double *m = c + vehicles;
  long repetitions = atol(argv[2]);
  double start = now(), sum = 0;
  for (long r = 0; r < repetitions; r++) {
    for (size_t v = 0; v < vehicles; v++)
      wheel_energy(data, ends, before, pieces, vmax, a[v], b[v], c[v], m[v], out + v, out + vehicles + v);
  }
  double used = now() - start;
  for (size_t v = 0; v < 2 * vehicles; v++) sum += out[v];
  printf("%.3f %.17g\n", used / (double)repetitions / (double)vehicles, sum);
  return 0;
}
