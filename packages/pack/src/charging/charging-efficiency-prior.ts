import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import type { FractionPrior } from "../composition/fraction-prior.js";

const touringClub: Source = {
  document: "release of a touring club, 9 December 2025: 26 cars at 11 kW, tests of 2022 to 2025",
  status: "seen",
};

/**
 * Energy drawn from the battery over energy from the wall, alternating current: dimensionless, 0 to 1. What lies between
 * them is the converter aboard (about 7 % of the wall's energy in the mean) and the battery with its conditioning (about 4
 * %).
 *
 * Valid for charging at home at 7 kW and more in mild weather. At 120 V efficiency was 3 % lower on average than at 240 V,
 * and 13 % lower when less than 2 kWh were drawn, over 1008 events of a US utility's study.
 *
 * @example
 * chargingEfficiencyPrior.likely; // 0.89
 */
export const chargingEfficiencyPrior: FractionPrior = /* @__PURE__ */ frozen({
  meaning: "energy drawn from the battery over energy from the wall, alternating current",
  low: 0.84,
  likely: 0.89,
  high: 0.89,
  extent: "published ends",
  points: [
    { value: 0.89, of: "mean of 26 cars at 11 kW" },
    { value: 0.884, of: "certification record, 240 V, 0 to 100 %: 77.702 kWh of 87.868 kWh" },
    { value: 0.879, of: "certification record, 240 V, 0 to 100 %: 81.052 kWh of 92.213 kWh" },
    { value: 0.84, of: "one car at 22 kW and 23 °C: 105.2 kWh of 125.2 kWh" },
  ],
  source: {
    document: "a touring club's tests, certification records as the press quoted them, a motoring club's test",
    status: "quoted",
  },
  likelySource: touringClub,
  note: "The upper end is a mean over cars, so single cars are better. At 10 A one type of charger gave 0.70 to 0.77.",
});
