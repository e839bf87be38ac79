package page

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
