package page

import "html/template"

// style is the look of the page: type and space, two colors for verdicts, each
// beside its word.
const style template.CSS = `
:root{--ink:#20262b;--soft:#4e5961;--rule:#c9ced2;--go:#14508c;--no:#9a3f00;--paper:#fff;--wash:#f4f2ee}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;color:var(--ink);background:var(--paper);font:1rem/1.5 Georgia,"Times New Roman",serif}
header,main,footer{max-width:60rem;margin:0 auto;padding:1rem}
header{padding-bottom:0}main{padding-top:0}
ul.areas>li:first-child{margin-top:0}
h1{font-size:1.7rem;line-height:1.2;margin:.5rem 0}
h2{font-size:1.35rem;line-height:1.25;margin:2.5rem 0 .5rem;padding-top:.6rem;border-top:2px solid var(--ink)}
h3{font-size:1.08rem;margin:1.4rem 0 .4rem}
p,li,dd,summary,.hash{overflow-wrap:anywhere}
td,th{overflow-wrap:break-word;min-width:4.5rem}
a{color:var(--go)}
a:focus-visible,summary:focus-visible{outline:3px solid var(--go);outline-offset:2px}
.skip{position:absolute;left:-100rem}
.skip:focus{position:static}
.verdict{font-weight:700;font-family:"Helvetica Neue",Arial,sans-serif}
.go{color:var(--go)}
.no{color:var(--no)}
.tally{font-size:1.2rem}
ul.areas{list-style:none;padding:0;margin:0}
ul.areas>li{border-left:.4rem solid var(--rule);padding:.1rem 0 .3rem .8rem;margin:1rem 0}
ul.areas>li.go-area{border-color:var(--go)}
ul.areas>li.no-area{border-color:var(--no);border-left-style:double}
ul.areas h2{margin:0;border:0;padding:0;font-size:1.08rem}
ul.areas p,ul.areas ul{margin:.2rem 0}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1rem;margin:.5rem 0}
dt{color:var(--soft)}
dd{margin:0}
.findings{list-style:none;padding:0}
.findings>li{padding:.5rem 0;border-bottom:1px solid var(--rule)}
.findings p{margin:.15rem 0}
.id{font-family:ui-monospace,Menlo,Consolas,monospace;font-size:.92em;font-weight:700}
.soft{color:var(--soft);font-size:.92rem}
details{margin:.6rem 0}
summary{cursor:pointer;font-weight:700;padding:.3rem 0}
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:.92rem}
caption{text-align:left;font-weight:700;padding:.3rem 0}
th,td{text-align:left;vertical-align:top;padding:.3rem .6rem .3rem 0;border-bottom:1px solid var(--rule)}
figure{margin:1.2rem 0}
figcaption{font-weight:700;margin-bottom:.3rem}
svg{width:100%;height:auto;max-width:44rem;display:block;background:var(--paper)}
svg text{font-family:"Helvetica Neue",Arial,sans-serif;fill:var(--ink)}
.tick{font-size:11px}
.axis{font-size:12px}
.level{font-size:11px;font-weight:700}
.grid{stroke:#e3e6e8;fill:none}
.frame,.tickmark{stroke:var(--ink);fill:none}
.limit{stroke:var(--no);stroke-width:2;fill:none}
.mean{stroke:var(--ink);stroke-width:1.5;stroke-dasharray:6 3 1 3;fill:none}
.band{fill:#d9dfe4}
.average{stroke:var(--ink);stroke-width:2.5;fill:none}
.expected{stroke:var(--ink);stroke-width:2;stroke-dasharray:5 4;fill:none}
.line{fill:none;stroke-width:1.6}
.mark{stroke:var(--paper);stroke-width:.8}
.cross{fill:none;stroke-width:2}
path.s0{stroke:#14508c}.mark.s0{fill:#14508c}
path.s1{stroke:#9a3f00;stroke-dasharray:7 3}.mark.s1{fill:#9a3f00;stroke-dasharray:none}
path.s2{stroke:#4b6b2f;stroke-dasharray:2 3}.mark.s2{fill:#4b6b2f;stroke-dasharray:none}
path.s3{stroke:#5f3a7a;stroke-dasharray:9 3 2 3}.mark.s3{fill:#5f3a7a;stroke-dasharray:none}
path.s4{stroke:#20262b;stroke-dasharray:1 2}.mark.s4{stroke:#20262b;stroke-dasharray:none}
.path-mark{stroke:var(--paper)}
img{max-width:100%;height:auto;display:block}
.code{width:9rem;height:9rem}
.hash{font-family:ui-monospace,Menlo,Consolas,monospace;font-size:.85rem}
.sign td{height:2.4rem}
@media (max-width:36rem){dl{grid-template-columns:1fr;gap:0}dd{margin-bottom:.3rem}h1{font-size:1.4rem}}
@media print{
body{font-size:9.5pt}
header,main,footer{max-width:none;padding:0}
.skip{display:none}
a{color:inherit;text-decoration:none}
h2{break-after:avoid}h3{break-after:avoid}
figure,tr,.findings>li,ul.areas>li{break-inside:avoid}
section.area{break-before:page}
details::details-content{content-visibility:visible;block-size:auto}
summary{list-style:none}
.scroll{overflow:visible}
}
`
