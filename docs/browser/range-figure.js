/** The one figure of the page: a line with its band, as the text of an SVG. */

/** @typedef {{ readonly speed: number, readonly low: number, readonly likely: number, readonly high: number }} Point in km/h and km */

const width = 720;
const height = 380;
const frame = { left: 76, right: width - 24, top: 40, bottom: height - 64 };

/**
 * @param {readonly Point[]} points by rising speed
 * @param {string} description what somebody should know who cannot see it
 */
export function rangeFigure(points, description) {
  const first = points[0]?.speed ?? 0;
  const last = points.at(-1)?.speed ?? 1;
  const most = Math.max(...points.map(({ high }) => high));
  const step = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000].find((each) => most / each <= 6) ?? most;
  const top = Math.ceil(most / step) * step;

  /** @param {number} speed */
  const x = (speed) => frame.left + ((speed - first) / (last - first)) * (frame.right - frame.left);
  /** @param {number} range */
  const y = (range) => frame.bottom - (range / top) * (frame.bottom - frame.top);
  /** @param {readonly Point[]} list @param {"low" | "likely" | "high"} part */
  const line = (list, part) =>
    list.map((point) => `${x(point.speed).toFixed(1)},${y(point[part]).toFixed(1)}`).join(" ");

  const levels = Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step);
  const grid = levels.map(
    (level) =>
      `<line class="grid" x1="${frame.left}" x2="${frame.right}" y1="${y(level)}" y2="${y(level)}"/>` +
      `<text x="${frame.left - 8}" y="${y(level) + 5}" text-anchor="end">${level}</text>`,
  );
  const speeds = points.map(
    ({ speed }) => `<text x="${x(speed)}" y="${frame.bottom + 26}" text-anchor="middle">${speed}</text>`,
  );
  return `<svg role="img" aria-label="${description}" viewBox="0 0 ${width} ${height}">
    <text x="0" y="22">Range (km)</text>
    <text x="${frame.right}" y="${height - 6}" text-anchor="end">Steady speed (km/h)</text>
    ${grid.join("")}${speeds.join("")}
    <polygon class="band" points="${line(points, "low")} ${line([...points].reverse(), "high")}"/>
    <polyline class="median" points="${line(points, "likely")}"/>
  </svg>`;
}
