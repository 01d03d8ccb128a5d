/*
 * Energy at the wheels of many vehicles over one cycle, in plain C: the yardstick for the same loop in the library.
 *
 * udds FILE REPETITIONS [all] reads doubles from FILE: the number of pieces, of vehicles, the largest speed, the typical resistance
 * of the order; then lists of the pieces in that order: acceleration and three integrals; first and last speed, duration; the
 * sums of four integrals over the pieces before, with one more for the end; then the lists of constant, linear and quadratic
 * forces and of masses. With "all" every vehicle goes through all pieces, one by one, as a plain loop does; without it the sums are
 * used, as in the library. It prints the nanoseconds a vehicle and the sum of all driving and braking energies.
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

/* The pieces in their order, and where to look for a key: as in the library. */
struct cycle {
  const double *rows, *ends, *before;
  int *drawers;
  size_t count;
  int all;
  double vmax, typical, slack, lowest, per_key;
};

static double key_of(const struct cycle *y, size_t i) {
  const double *q = y->ends + 3 * i;
  return y->rows[4 * i] + y->typical * (q[0] * q[0] + q[1] * q[1]) / 2;
}

static size_t drawer_of(const struct cycle *y, double key) {
  double place = (key - y->lowest) * y->per_key, most = (double)y->count;
  return (size_t)(place < 0 ? 0 : place > most ? most : place);
}

static int fill_drawers(struct cycle *y) {
  y->drawers = malloc((y->count + 2) * sizeof(int));
  if (y->drawers == NULL || y->count < 2) return 0;
  y->slack = 0;
  for (size_t i = 0; i < y->count; i++) {
    const double *q = y->ends + 3 * i;
    y->slack = fmax(y->slack, y->typical * fabs(q[1] * q[1] - q[0] * q[0]) / 2);
  }
  y->lowest = key_of(y, 0);
  y->per_key = (double)y->count / (key_of(y, y->count - 1) - y->lowest);
  for (size_t drawer = 0, piece = 0; drawer <= y->count; drawer++) {
    while (piece < y->count && drawer_of(y, key_of(y, piece)) < drawer) piece++;
    y->drawers[drawer] = (int)piece;
  }
  y->drawers[y->count + 1] = (int)y->count;
  return 1;
}

/* As the library does it: pieces that surely brake or drive by their sums, those in between one by one. */
__attribute__((noinline)) static void wheel_energy(const struct cycle *y, double a, double b, double c, double m,
                                                   double *driving, double *braking) {
  double vmax = y->vmax, square = vmax * vmax, lin = b * vmax, quad = (c - m * y->typical) * square;
  double least = -(a + (lin > 0 ? lin : 0) + (quad > 0 ? quad : 0)) / m - y->slack;
  double most = -(a + (lin < 0 ? lin : 0) + (quad < 0 ? quad : 0)) / m + y->slack;
  int sums = m > 0 && !y->all;
  size_t from = sums ? (size_t)y->drawers[drawer_of(y, least)] : 0;
  size_t to = sums ? (size_t)y->drawers[drawer_of(y, most) + 1] : y->count;
  double change = m > 0 ? fmax(-least, most) + y->typical * square : vmax, spread = change * (fabs(b) + 2 * vmax * fabs(c));
  int monotone = b >= 0 && c >= 0;
  double net = 0, size = 0, hidden = 0;
  for (size_t i = from; i < to; i++) {
    const double *p = y->rows + 4 * i, *q = y->ends + 3 * i;
    double k = a + m * p[0], e = k * p[1] + (b * p[2] + c * p[3]);
    net += e;
    size += fabs(e);
    if (fabs(e) >= spread * p[1]) continue;
    if (!monotone || (k + q[0] * (b + c * q[0])) * (k + q[1] * (b + c * q[1])) < 0) hidden += smaller(k, b, c, q[0], q[1], q[2]);
  }
  const double *s = y->before + 4 * from, *t = y->before + 4 * to, *w = y->before + 4 * y->count;
  double below = a * s[0] + b * s[1] + c * s[2] + m * s[3];
  double above = a * (w[0] - t[0]) + b * (w[1] - t[1]) + c * (w[2] - t[2]) + m * (w[3] - t[3]);
  *driving = (above > 0 ? above : 0) + (size + net) / 2 + hidden;
  *braking = (below < 0 ? below : 0) + (net - size) / 2 - hidden;
}

int main(int argc, char **argv) {
  FILE *file = argc >= 3 ? fopen(argv[1], "rb") : NULL;
  double head[4];
  if (file == NULL || fread(head, sizeof(double), 4, file) != 4) return 1;
  size_t pieces = (size_t)head[0], vehicles = (size_t)head[1];
  size_t size = 11 * pieces + 4 + 4 * vehicles;
  double *data = malloc(size * sizeof(double)), *out = malloc(2 * vehicles * sizeof(double));
  if (data == NULL || out == NULL || fread(data, sizeof(double), size, file) != size) return 1;
  fclose(file);
  struct cycle y = {.rows = data, .ends = data + 4 * pieces, .before = data + 7 * pieces, .count = pieces};
  y.vmax = head[2];
  y.typical = head[3];
  y.all = argc > 3;
  if (!fill_drawers(&y)) return 1;
  const double *a = y.before + 4 * (pieces + 1), *b = a + vehicles, *c = b + vehicles;
  const double *m = c + vehicles;
  long repetitions = atol(argv[2]);
  double start = now(), sum = 0;
  for (long r = 0; r < repetitions; r++) {
    for (size_t v = 0; v < vehicles; v++)
      wheel_energy(&y, a[v], b[v], c[v], m[v], out + v, out + vehicles + v);
  }
  double used = now() - start;
  for (size_t v = 0; v < 2 * vehicles; v++) sum += out[v];
  printf("%.3f %.17g\n", used / (double)repetitions / (double)vehicles, sum);
  return 0;
}
