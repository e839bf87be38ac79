package page

import (
	"html/template"
)

// layout puts the pieces of a page in place. Texts are escaped where they are
// put in.
const layout = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{.Job.Name}}: is this floor ready to install?</title>
<link rel="icon" href="data:,">
<style>{{.Style}}</style>
</head>
<body>
<a class="skip" href="#answer">Go to the answer</a>
<header>
<p class="soft">{{.Job.Name}}</p>
<h1>Is this floor ready to install?</h1>
<p class="tally"><strong>{{.Tally}}</strong></p>
</header>
<main>
<section id="answer" aria-label="The answer for each area">
<ul class="areas">
{{range .Areas}}<li class="{{if .Good}}go-area{{else}}no-area{{end}}">
<h2><a href="#{{.Anchor}}">{{.Heading}}</a>: <span class="verdict {{if .Good}}go{{else}}no{{end}}">{{.Says}}</span></h2>
{{if .GoodUntil.Shown}}<p>Good until {{.GoodUntil.Written}}.</p>{{end}}
{{range .Over}}{{if .Deciding}}<p><strong>Over:</strong> {{.Reason}}</p>{{end}}{{end}}
{{with .Missing}}<p><strong>Missing:</strong></p><ul>{{range .}}<li>{{.What}}</li>{{end}}</ul>{{end}}
{{with .Outlook.Brief}}<p><strong>When:</strong> {{.}}</p>{{end}}
{{with .Next}}{{if .Acts}}<p><strong>Next:</strong> {{(index .Acts 0).Act}}{{with (index .Acts 0).Who}} ({{.}}){{end}}{{with .Earliest}}; GO on {{.}} at the earliest{{end}}</p>{{end}}{{end}}
</li>
{{end}}</ul>
{{with .Job.Settings.Changed}}<p>Settings that differ from the rules' own: {{range $i, $s := .}}{{if $i}}; {{end}}{{$s.Item}} is {{$s.Value.Written}}{{end}}.</p>{{end}}
</section>
<section>
<h2>Job and record</h2>
<dl>{{range .Head}}<dt>{{.Label}}</dt><dd>{{.Text}}</dd>{{end}}</dl>
</section>
{{range .Areas}}
<section class="area" id="{{.Anchor}}">
<h2>Area {{.Heading}}: <span class="verdict {{if .Good}}go{{else}}no{{end}}">{{.Says}}</span></h2>
<dl>{{range .Facts}}<dt>{{.Label}}</dt><dd>{{.Text}}</dd>{{end}}</dl>
{{if or .Over .Unproven}}<h3>Over a limit or not proven</h3>
<ul class="findings">{{range .Over}}{{template "finding" .}}{{end}}{{range .Unproven}}{{template "finding" .}}{{end}}</ul>{{end}}
{{if .Conditions}}<h3>Conditions</h3><ul>{{range .Conditions}}<li>{{.}}</li>{{end}}</ul>{{end}}
{{with .Outlook.When}}<h3>When</h3>{{range .}}<p>{{.}}</p>{{end}}<p class="soft">A forecast is advice and never changes a verdict.</p>{{end}}
{{with .Outlook.IfInstalled}}<h3>If it were installed now</h3>{{range .}}<p>{{.}}</p>{{end}}{{end}}
{{if .Next.Acts}}<h3>Next</h3><ol>{{range .Next.Acts}}<li>{{.Says}}</li>{{end}}</ol><p>{{.Next.SaysWhen}}.</p>{{end}}
{{with .Outlook.Holds.Says}}<p>Does it hold? {{.}}.</p>{{end}}
{{if .Figures}}<details{{if .Open}} open{{end}}><summary>Pictures ({{len .Figures}})</summary>{{range .Figures}}{{if .Drawing}}<figure><figcaption>{{.Caption}}</figcaption>{{.Drawing}}{{range .Notes}}<p class="soft">{{.}}</p>{{end}}</figure>{{end}}{{end}}</details>{{end}}
{{if .Met}}<details><summary>Met ({{len .Met}})</summary><ul class="findings">{{range .Met}}{{template "finding" .}}{{end}}</ul></details>{{end}}
{{if .Unneeded}}<details><summary>Not needed ({{len .Unneeded}})</summary><ul>{{range .Unneeded}}<li><span class="id">{{.ID}}</span>: {{.Reason}}</li>{{end}}</ul></details>{{end}}
{{if .Discarded}}<h3>Discarded holes</h3><ul>{{range .Discarded}}<li>{{.}}</li>{{end}}</ul>{{end}}
{{if .Waivers}}<h3>Waivers</h3><ul>{{range .Waivers}}<li>{{.Says}}</li>{{end}}</ul>{{end}}
<h3>Sign-off</h3>
{{if .Signed}}<ul>{{range .Signed}}<li>{{.Role}}, {{.Name}}, {{.At.Written}}, {{.Decision}}</li>{{end}}</ul>{{end}}
<div class="scroll" tabindex="0" role="region" aria-label="Lines to sign for area {{.Heading}}"><table class="sign"><thead><tr><th scope="col">Role</th><th scope="col">Name</th><th scope="col">Signature</th><th scope="col">Date</th></tr></thead>
<tbody><tr><th scope="row">Installer</th><td></td><td></td><td></td></tr><tr><th scope="row">General contractor</th><td></td><td></td><td></td></tr></tbody></table></div>
</section>
{{end}}
<section>
<h2>Limits and sources</h2>
<details><summary>Every limit, whose it is and where it was typed ({{len .Limits}})</summary>
<div class="scroll" tabindex="0" role="region" aria-label="Limits"><table><thead><tr><th scope="col">Area</th><th scope="col">What</th><th scope="col">Limit</th><th scope="col">Whose</th><th scope="col">Source</th><th scope="col">Note</th></tr></thead>
<tbody>{{range .Limits}}<tr><td>{{.Area}}</td><td>{{.What}}</td><td>{{.Limit}} {{.Unit}}</td><td>{{.Whose}}</td><td>{{.Cite.Source}}{{with .Cite.Standing}} ({{.}}){{end}}</td><td>{{.Note}}</td></tr>{{end}}</tbody></table></div></details>
<details><summary>Every check and its source ({{len .Rules}})</summary>
<div class="scroll" tabindex="0" role="region" aria-label="Checks"><table><thead><tr><th scope="col">Check</th><th scope="col">Asks</th><th scope="col">Default</th><th scope="col">Source</th><th scope="col">Standing</th></tr></thead>
<tbody>{{range .Rules}}<tr><th scope="row" class="id">{{.ID}}</th><td>{{.Asks}}</td><td>{{.Default}}</td><td>{{.Cite.Source}}</td><td>{{.Cite.Standing}}</td></tr>{{end}}</tbody></table></div></details>
</section>
{{if .Meters}}<section>
<h2>Instruments</h2>
<div class="scroll" tabindex="0" role="region" aria-label="Instruments"><table><thead><tr><th scope="col">Instrument</th><th scope="col">Make and model</th><th scope="col">Serial</th><th scope="col">Calibrated on</th><th scope="col">Due on</th><th scope="col">Certificate</th></tr></thead>
<tbody>{{range .Meters}}<tr><th scope="row">{{.ID}}</th><td>{{.Model}}</td><td>{{.Serial}}</td><td>{{.CalibratedOn.Written}}</td><td>{{.DueOn.Written}}</td><td>{{.Certificate}}</td></tr>{{end}}</tbody></table></div>
</section>{{end}}
{{if .Photos}}<section>
<h2>Photos</h2>
{{range .Photos}}<figure>{{if .Data}}<img src="{{embedded .Data}}" alt="{{if .Of}}{{.Of}}{{else}}{{.File}}{{end}}">{{end}}<figcaption>{{.File}}{{with .Area}}, area {{.}}{{end}}{{with .TakenAt}}, {{.}}{{end}}{{with .Of}}: {{.}}{{end}}</figcaption>{{if .SHA256}}<p class="hash">SHA-256 {{.SHA256}}</p>{{else}}<p class="soft">The file was not given.</p>{{end}}</figure>
{{end}}</section>{{end}}
<section>
<h2>Cautions</h2>
{{range .Cautions}}<h3>{{.Heading}}</h3><ul>{{range .Sentences}}<li>{{.}}</li>{{end}}</ul>{{end}}
</section>
</main>
<footer>
<h2>Seal</h2>
<p class="hash">{{.Seal}}</p>
{{.Code}}
<p class="soft">The seal stands for the record and for what was decided. Whoever wrote it down can tell whether either was changed since.</p>
</footer>
</body>
</html>
{{define "finding"}}<li><p><span class="id">{{.ID}}</span> <strong>{{.Outcome}}</strong>{{if not .Deciding}} (advice){{end}}: {{.Reason}}</p>
{{if or .Value .Limit}}<p class="soft">{{with .Value}}Value {{.}}{{end}}{{with .Limit}}; limit {{.}}{{end}} {{.Unit}}</p>{{end}}
<p class="soft">{{.Cite.Source}} ({{.Cite.Standing}}){{with places .Evidence}}; {{.}}{{end}}</p></li>
{{end}}`

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
