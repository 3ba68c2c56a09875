## What a paper says as it is set on pages.

page-of = page { $page } of { $pages }
signature-of = signature of { $whom }
no-pdf = this paper could not be made as PDF: { $why }
no-workbook = this log could not be made as a workbook: { $why }
