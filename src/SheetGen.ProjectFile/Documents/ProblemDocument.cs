using System.Globalization;
using System.Text;

namespace SheetGen.ProjectFile.Documents;

/// <summary>docs/problems.md, made from the tables of problem codes and of findings.</summary>
public static class ProblemDocument
{
    /// <summary>The document, lines ended by line feeds.</summary>
    public static string Text()
    {
        var page = new StringBuilder("""
            # Problems of a project file, a corridor's list and a study; findings of a layout

            Made from `src/SheetGen.ProjectFile/ProblemCodes.cs` and `Documents/FindingMeanings.cs`; a test fails when this page is stale, and
            `SHEETGEN_WRITE_DOCS=1 dotnet test tests/SheetGen.Tests -c Release --filter "FullyQualifiedName~DocumentTests"` writes it anew.

            Problems are printed as `file:line:column: severity code: message`, all of them in one run, in order of place.
            Any error means that nothing is written (exit 2); warnings do not stop the work.

            """.ReplaceLineEndings("\n"));
        foreach (ProblemCode code in ProblemCodes.All.Concat(ProblemCodes.OfNamedFiles).Concat(ProblemCodes.OfLists))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {code.Code}\n\n{code.Severity}: {code.Title}.\n\n");
            page.Append(CultureInfo.InvariantCulture, $"{code.Meaning}\n\nWhat to do: {code.Remedy}\n");
        }
        page.Append("""

            # Findings of a layout

            Findings stand in the summary of a run, in `findings.json`, in the workbook, on the sheets and on the review page. An error stays until the layout changes or the
            engineer accepts it by name (`accept`). Most name a wall, stations and nails.

            | code | severity | what it means | what to do |
            | --- | --- | --- | --- |

            """.ReplaceLineEndings("\n"));
        foreach (FindingMeanings.Entry finding in FindingMeanings.All)
            page.Append(CultureInfo.InvariantCulture, $"| `{finding.Code}` | {finding.Severity} | {finding.Meaning} | {finding.Remedy} |\n");
        return page.ToString();
    }
}
