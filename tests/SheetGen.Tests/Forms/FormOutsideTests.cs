using System.Globalization;
using System.Text.RegularExpressions;
using SheetGen.ProjectFile;
using SheetGen.Tests.Inputs;
using SheetGen.Tests.Outside;
using SheetGen.Tests.ProjectFile;
using Xunit;

namespace SheetGen.Tests.Forms;

/// <summary>The form filled in by openpyxl and saved by LibreOffice, as users do.</summary>
[Trait("Category", "Outside")]
public sealed class FormOutsideTests
{
    [Fact]
    public void A_form_that_others_filled_in_and_saved_is_read()
    {
        using var folder = new InputFolder();
        File.WriteAllBytes(folder.Of("wall.xlsx"), new FormBook(BaseWall.Text).Bytes());
        OutsideResult filled = OutsideReader.Script("fill_form.py", "openpyxl").Run(
            folder.Of("wall.xlsx"), folder.Of("filled.xlsx"), "Sections!E6==3+0.25", "Sections!F6=0.1", "Project!B6=Their number", "Prices!A6=SN-1", "Prices!B6=52.5");
        Assert.True(filled.ExitCode == 0, filled.Errors);
        Assert.InRange(int.Parse(filled.Output, CultureInfo.InvariantCulture), 500, 2000);

        // openpyxl stores no result of a formula; a spreadsheet program does.
        Assert.Contains("Sections!E6: error R07: \"horizontal_spacing\" cannot be taken: the cell's formula has no result", string.Join('\n', ProjectReader.Read(folder.Of("filled.xlsx")).Problems.Select(ProblemPrinter.Plain)), StringComparison.Ordinal);
        OutsideResult saved = OutsideReader.LibreOffice.Run("-env:UserInstallation=file://" + folder.Of("profile"), "--headless", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", folder.Of("saved"), folder.Of("filled.xlsx"));
        Assert.True(saved.ExitCode == 0, saved.Errors);
        ReadResult read = ProjectReader.Read(folder.Of("saved/filled.xlsx"));

        string typed = new Regex("horizontal_spacing: 5\n").Replace(BaseWall.Text, "horizontal_spacing: 3.25\n        columns: 0.1\n", 1)
            .Replace("number: T-1", "number: Their number", StringComparison.Ordinal) + "\nprices: {SN-1: 52.5}\n";
        ReadResult wanted = ProjectReader.ReadText(typed, "wall.yaml");
        Assert.Equal(wanted.Problems.Select(p => p.Code), read.Problems.Select(p => p.Code));
        Assert.Equal(3.25, read.Project!.Walls[0].Sections[0].HorizontalSpacing);
        Assert.Equal(ProjectMeaning.Of(wanted.Project!), ProjectMeaning.Of(read.Project));
    }
}
