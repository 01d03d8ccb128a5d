/**
 * Texts that are no unit, and what the run time says of each; the compiler must refuse every one of them (literal.test-d.ts), and
 * the run time with this code (literal.test.ts). One idea a line.
 */
// biome-ignore format: a table reads best with one idea a line
export const invalidUnits = {
  UNIT_SYNTAX: [
    // nothing, or nothing where a unit should be
    "", " ", "/", "//", "·", "*", "m/", "m /", "m/ ", "1/", "kWh/", "m·", "m*", "m⋅", "m· ", "·m", "*m", "⋅m", "/·m", "m/·s", "m·/s", "m*/s", "/m/",
    // two operators
    "m··s", "m**s", "m*·s", "m· ·s", "m * * s", "kg··m/s²", "Wh//km", "Wh/ /km", "N·/m",
    // a second slash
    "W/m²/K", "m/s/s", "W/m/K", "1/m/s", "/m/s", "kWh/100 km/h", "lbf/mph/mph", "J/kg/K", "(W/m²/K)", "W/(m²/K/s)", "m/(s)/(s)",
    // parentheses that do not close, do not open, or hold nothing
    "(", ")", "()", ")(", "(m", "m)", "((m)", "(m))", "W/(m²·K", "W/m²·K)", "W/()", "()·m", "m()", "m·()", "(m/)", "(·m)", "(/)", "( )", "W/((m²·K)",
    // parentheses that touch something
    "m(s)", "N(m)", "kW(h)", "(m)s", "(m)(s)", "(kW)h", "2(m)", "kg(m/s²)", "W/m²(K)", "(m/s)²s", "(m)²(s)", "(m)100", "(kW)·(h)km",
    // powers that are none
    "m^", "m^^2", "m^x", "m^s", "m^1.5", "m^0", "m0", "m⁰", "m⁻⁰", "m^-0", "m10", "m^10", "m¹⁰", "m²³", "m^-10", "m^²", "m⁻", "m⁻2", "m--2", "m^--2", "m^+2",
    "m+2", "m^ 2", "m ^2", "m ²", "m -2", "m^(2)", "m²2", "m2²", "m²-2", "m^2^2", "m2^2", "m⁻²⁻²", "m^2.0", "m2.5", "²", "^2", "-2", "⁻¹", "m-", "kg m s-", "m/s^",
    "(m)^", "(m)^x", "(m)^0", "(m)⁰", "(m/s)10", "(m/s)²³", "(m)⁻", "(m)^²", "(m)--1", "(m) ²", "(m) ^2",
    // powers beyond nine
    "m⁹·m", "m^9 m", "(m²)⁵", "(m^5)²", "(m³)^4", "m⁵·m⁵", "1/(m⁵·m⁵)", "((m³)³)²", "s⁻⁹·s⁻¹",
    // numbers that touch a unit, or are none
    "m/0x10", "m/.5", "m/5.", "m/5. s", "m/1.5.2", "m/1,000", "m/-2", "m·-2", "m/+2 s", "m/2(s)", "m/(2)s", "(m)2s", "m/100 2²",
    "m/2²", "m·10^3", "m/10³ s", "m·2^2", "m/0", "m·0 s", "m/(0 s)", "m/0.0", "m·00",
    // a symbol that touches another thing than a number
    "m²s", "m2s", "m/s2kg", "m/2s3kg",
    // a number first, which would run into the number of the quantity
    "100 km", "2 m", "1 m", "1·m", "1²", "1^2", "12", "2", "0", "0.5 m", "1000", "2/m", "10/km", "1 1/km", " 2 m", "5 1/km", "100", "1.0", "1m", "1(m)",
    // characters of no unit
    "m+s", "m=s", "€", "$/kWh", "m,s", "m;s", "m|s", "m÷s", "m×s", "m:s", "m\\s", "kg & m", "m?", "{m}", "[m]", "<m>", "m!", "‰", "ms2x", "m\ts", "m\ns",
    // beyond what anybody writes
    "m·m·m·m·m·m·m·m·m·m", "1/(s·(s/(s·(s/(s·(s/(s·(s/(s·(s)))))))))",
    "kg·(m/s)/(kg·(m/s))·kg·(m/s)/(kg·(m/s))·kg·(m/s)/(kg·(m/s))·kg·(m/s)/(kg·(m/s)·K)",
    "km                                                                               h",
  ],
  UNKNOWN_UNIT: [
    // no unit, or another case
    "kWhh", "Kg", "KG", "KWh", "kwh", "kw", "wh", "w", "M", "Km", "KM", "MI", "S", "H", "n", "pa", "kpa", "Bar", "PSI", "v", "a", "k", "°c", "°f", "HP", "ps", "l", "LB", "Lb", "Mph",
    // what people write
    "kph", "kmh", "kmph", "lbs", "ton", "tons", "tonne", "hr", "hrs", "sec", "yr", "mile", "miles", "liter", "litre", "feet", "foot", "inch", "inches", "meter", "metre", "gram", "Watt",
    "watt", "joule", "volt", "amp", "newton", "degrees", "percent", "mpg", "mpge", "kWhr", "ftlb", "bhp", "rev", "sqft", "cc", "ml", "mwh", "µ", "#", "\"", "'", "Δ", "ΔΔK", "Δkg",
    "Nm", "kNm", "lb-ft", "ft-lb", "ft-lbs", "lbf-ft", "ft-lbf", "lb.ft", "N.m", "m.s", "m-s", "kW-h", "kW.h", "cv", "ch", "short ton", "metric ton", "US gal", "imp gal", "gal", "gallon", "gallons",
    "hour", "hours", "day", "days", "minutes", "seconds", "years", "tonnes", "l/100 km", "mi/gal",
    // a degree and its letter apart, which would be an angle times a charge
    "deg C", "deg F", "° C", "° F", "deg\u00a0C", "°\u202fF", "W/deg C", "W/(m² ° C)", "deg C/min", "kg deg C m", "Δ° C", "deg C2", "º", "º C", "ºC", "ºF", "W/ºC",
    // numbers of another notation
    "m·1e3", "m/1e3 s", "m·1_000", "m/10e",
    // in a compound, a power or parentheses
    "kWh/mile", "Wh/Km", "kwh/100 km", "kW·hr", "m/sec", "m/sec²", "Kg·m", "kg·M²", "W/(m2·k)", "(Kg)", "(kg·M)²", "kms²", "lbs/ft³", "kWh/(100 Km)", "J/(kg·k)", "mx/s", "x", "xy·z",
  ],
} as const;

/** Texts that are no quantity: number, then unit. */
// biome-ignore format: a table reads best with one idea a line
export const invalidLiterals = {
  NUMBER_SYNTAX: [
    // no number
    "", " ", "\u00a0", "\t", "kg", "five kg", "x", "NaN kg", "Infinity kg", "-kg", "- kg", "-", "+", ".", ". kg", ".kg", "-.kg", ",5 kg", "e3 kg", "×10³ kg", "Δ", "ΔK", "Δ K", "ΔΔ5 K", "−", "/5 kg", "(5) kg", "$5", "~5 kg", "± 5 kg", "≈5 kg", "< 5 kg",
    // two signs, or a sign that stands alone
    "--5 kg", "+-5 kg", "-−5 kg", "- 5 kg", "+ 5 kg", "––5 kg", "– 5 kg", "-Δ5 K",
    // a comma as decimal sign, and groups that are none
    "1,5 kg", "0,29", "1,2000 kg", "12,34 kg", "1,23,456 kg", "1,234,56 kg", "1234,567 kg", "2,7", "1 23 kg", "12 34 kg", "1 2 kg", "1234 567 kg", "1 2345 kg", "1 000 00 kg", "1,000 00 kg", "1  000 kg",
    // a group of digits that starts with a lone zero
    "0,075 kg", "0 075 kg", "0,500", "00,075 kg", "012,345 kg", "-0,075 kg", "0 000 kg", "0\u202f075 kg", "0,075.5 kg",
    // the same with groups
    "1.200,5 kg", "1 200,5 kg", "1\u202f200,50 kg", "1.234.567,8 kg", "1,200,5 kg",
    // points
    "5. kg", "5.", "5.\u00a0", "5.\t", "1.2.3 kg", "1..2 kg", "5..10 m", "5 .5 kg", "1.5 .5 kg", "1.234.567 kg", "5.e3 kg", ".5.5 kg", "1.5 5 kg",
    // exponents of too many digits
    "1e0005 kg", "2×10^0003 kg", "1e1000 kg", "1E-0001 kg", "1e3 5 kg", "1e3.5 kg",
    // a number in front of a unit
    "5 10/km", "5 2/m", "5 100 2 km", "2×10³ 5 kg",
  ],
  UNIT_SYNTAX: [
    "5 kg/", "5 kg··m", "5 m(s)", "5 kg)", "5 W/m²/K", "5 m^0", "5/", "5 /", "5 €", "5 -kg", "5-kg", "5 –5 kg", "5 , kg", "5, kg",
    "2×10 kg", "2×10⁻ kg", "2×10⁰⁰⁰⁰ kg", "2×10^ kg", "2×10^⁻3 kg", "2 × kg", "2 ×  10³ kg", "5–7 kg", "5 m²³", "5 ()", "5 ( kg",
  ],
  UNKNOWN_UNIT: [
    "5 kWhh", "5 Kg", "5 kwh/km", "5 kph", "5 lbs", "5 e3 kg", "5 kgs", "5x", "5 x", "5 kilo", "5k", "5 kg or so", "Δ5 kg", "Δ5", "Δ10 m", "5e kg", "5e kg^", "5 to 10..", "2x10^3 kg", "0x", "1_000 kg", "1e kg", "0x10 kg", "0b11 kg", "5E", "10 Δ", "5 kWh / 100 Km", "5 °c", "5 deg C", "5 ° C", "20 º", "5 hours", "5 gal", "5 Nm",
  ],
} as const;
