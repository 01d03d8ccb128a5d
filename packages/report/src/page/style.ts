import { dark, light, type PageColours } from "./colours.js";

function variables(colours: PageColours): string {
  return Object.entries(colours)
    .map(([name, value]) => `--${name}:${value}`)
    .join(";");
}

/** @internal The style of a page: nothing to load, light and dark as the reader prefers, plain on paper. */
export function pageStyle(): string {
  return `
:root{color-scheme:light dark;${variables(light)}}
@media (prefers-color-scheme:dark){:root{${variables(dark)}}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--text);font:1.0625rem/1.55 system-ui,"Helvetica Neue",Arial,"Liberation Sans","DejaVu Sans",sans-serif}
.sheet{max-width:60rem;margin:0 auto;padding:2rem 1.25rem 4rem}
h1{font-size:1.9rem;line-height:1.2;margin:0 0 .4rem}
h2{font-size:1.3rem;margin:2.4rem 0 .6rem;padding-top:.7rem;border-top:1px solid var(--line)}
h3,h4,h5,h6{font-size:1.08rem;margin:1.6rem 0 .4rem}
p,ul,ol{max-width:46rem}
.lead{font-size:1.15rem;margin:0 0 1.2rem}
.date,.tarewatt-detail,figcaption,tfoot{color:var(--quiet);font-size:.9rem}
.invented,.cautions{background:var(--cautionGround);color:var(--cautionText);border-left:.3rem solid currentColor;padding:.7rem 1rem;margin:1rem 0}
.invented p{margin:0}
.warnings{background:var(--panel);border-left:.3rem solid var(--quiet);padding:.7rem 1rem;margin:1rem 0}
.cautions h2,.warnings h2{border:0;padding:0;margin:0 0 .3rem;font-size:1.08rem}
.cautions ul,.warnings ul{margin:0;padding-left:1.2rem}
.answers{display:grid;grid-template-columns:repeat(auto-fit,minmax(15rem,1fr));gap:1px;margin:1.4rem 0}
.answers>div{background:var(--panel);outline:1px solid var(--line);padding:.9rem 1.1rem}
.answers dt{color:var(--quiet);font-size:.95rem}
.answers dd{margin:0}
.answers .value{overflow-wrap:anywhere;color:var(--accent);font-size:1.3rem;line-height:1.3;font-weight:600;font-variant-numeric:tabular-nums}
.answers .detail{font-size:.9rem;color:var(--quiet)}
.scroll{overflow-x:auto;margin:1.2rem 0}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;min-width:min(100%,24rem)}
caption{text-align:left;padding-bottom:.5rem}
caption .tarewatt-detail{display:block}
th,td{padding:.35rem .9rem .35rem 0;vertical-align:top}
thead th{border-bottom:2px solid var(--text)}
tbody th,tbody td{border-bottom:1px solid var(--line)}
tbody th{font-weight:500}
tfoot td{padding-top:.5rem}
figure{margin:1.4rem 0}
.tarewatt-plate{background:#fff;overflow-x:auto}
.tarewatt-plate svg{display:block;max-width:100%;min-width:32rem;height:auto}
figcaption{margin-top:.4rem}
.tarewatt-working{padding-left:1.6rem}
.tarewatt-working li{margin-bottom:1.2rem}
.tarewatt-working p{margin:.1rem 0}
.tarewatt-equation{overflow-wrap:anywhere}
sub,sup{line-height:0}
:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
@media print{:root{color-scheme:light;${variables(light)}}body{font-size:10pt}.sheet{max-width:none;padding:0}h2,h3{break-after:avoid}table,figure,.answers,.warnings,.cautions,.tarewatt-working li{break-inside:avoid}thead{display:table-header-group}.scroll{overflow:visible}}
`.trim();
}
