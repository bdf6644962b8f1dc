using System.Text.RegularExpressions;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Forms;
using SheetGen.ProjectFile.Keys;
using SheetGen.Tests.Inputs;
using SheetGen.Tests.ProjectFile;
using SheetGen.Writers.Form;
using Xunit;

namespace SheetGen.Tests.Forms;

/// <summary>The form that stands in place of a project file.</summary>
public sealed class FormTests
{
    public static TheoryData<string> Projects =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("demo"), "wall.yaml", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Repository.PathOf("templates", "starter"), "*.yaml"))
            .Concat([Repository.PathOf("tests", "SheetGen.Tests", "Cases", "bridge-wall.yaml"), Repository.PathOf("tests", "SheetGen.Tests", "Cases", "base-wall.yaml")])
            .Select(f => Path.GetRelativePath(Repository.Root, f)).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_form_filled_from_a_project_file_says_the_same(string name)
    {
        string path = Repository.PathOf(name), yaml = File.ReadAllText(path);
        ReadResult typed = ProjectReader.Read(path);
        var book = new FormBook(yaml);
        using var folder = new InputFolder();
        foreach (string beside in Directory.EnumerateFiles(Path.GetDirectoryName(path)!).Where(f => Path.GetExtension(f) is ".dxf" or ".xml" or ".csv"))
            File.Copy(beside, folder.Of(Path.GetFileName(beside)));
        ReadResult filled = FormBook.Read(folder, book.Bytes());

        Assert.Empty(book.Unread);
        Assert.Equal(typed.Problems.Select(p => p.Code).Order(StringComparer.Ordinal), filled.Problems.Select(p => p.Code).Order(StringComparer.Ordinal));
        Assert.Equal(ProjectMeaning.Of(typed.Project!), ProjectMeaning.Of(filled.Project!));
        // What stands for the form's text is a project file that says the same again.
        using var second = new InputFolder();
        foreach (string beside in Directory.EnumerateFiles(folder.Path).Where(f => Path.GetExtension(f) != ".xlsx"))
            File.Copy(beside, second.Of(Path.GetFileName(beside)));
        Assert.Equal(ProjectMeaning.Of(typed.Project!), ProjectMeaning.Of(second.Read(filled.Text).Project!));
    }

    /// <summary>Every block, also those that no demo has, with files of other programs, pairs, lists in brackets and names of the user's own.</summary>
    [Fact]
    public void Every_kind_of_key_goes_through_a_form()
    {
        const string more = """
            borings:
              - from_csv: {file: borings.csv}
              - {name: B-9, at: {northing: 4990, easting: 2050}, top: 121, bottom: 78, layers: [{to: 108, name: "clay; soft", plasticity_index: 24}, {to: 78, name: sand}]}
            fixed:
              - {row: "1", station: 10+20, splay: 5}
            accept:
              - {code: cover, stations: [10+20, 10+28], nails: [A-1-02, A-1-03], reason: agreed, by: "A. B."}
            prices: {SN-1: 52.50, "SN 2": 10}
            rates: {stock_length: [40, 60], drilling: {stiff clay: 60}, build_up: {SN-1: {crew: 12.5, material: 18}}, mesh: {length: 20, width: 8, lap: 8 in}}
            section_defaults: {pattern: staggered, design: {slip_surface: [{name: one, points: [[0, 102], [6, 112]]}], bond_by_layer: {stiff clay: 8 psi}}}
            sheets: {revisions: [{number: "1", date: 2026-02-01, text: "moved, = again"}]}
            """;
        string yaml = Regex.Replace(BaseWall.Text, @"^(borings|fixed|accept|prices|rates|sheets):.*\n([ -].*\n)*", "", RegexOptions.Multiline) + more + "\n";
        using var folder = new InputFolder();
        folder.With("borings.csv", "name,station,offset,top,bottom,to,soil\nB-1,10+20,5,120,80,40,clay\n");
        ReadResult typed = folder.Read(yaml);
        Assert.DoesNotContain(typed.Problems, p => p.Severity == Severity.Error);
        var book = new FormBook(yaml);

        ReadResult filled = FormBook.Read(folder, book.Bytes());

        Assert.Empty(book.Unread);
        Assert.Equal(typed.Problems.Select(p => p.Code).Order(StringComparer.Ordinal), filled.Problems.Select(p => p.Code).Order(StringComparer.Ordinal));
        Assert.Equal(ProjectMeaning.Of(typed.Project!), ProjectMeaning.Of(filled.Project!));
    }

    [Fact]
    public void Every_key_of_the_key_table_has_one_place_in_the_form()
    {
        var places = new List<string>();
        places.AddRange(FormPlan.Keys.SelectMany(k => k.Rows).Where(r => r.Part < 2).Select(r => string.Join('.', r.Path)));
        foreach (FormTable table in FormPlan.Tables.Where(t => t.Kinds.Count == 0))
            places.AddRange(Of(table));
        places.AddRange(FormPlan.Tables.Where(t => t.Kinds.Count > 0).SelectMany(Of).Distinct());
        places.AddRange(FormPlan.Names.Select(n => string.Join('.', n.Path)));
        string[] wanted = [.. Leaves(KeyTable.Root, "").Distinct()];
        // A key may stand whole in one cell, in brackets.
        Assert.Equal([], wanted.Where(w => !places.Contains(w) && !places.Any(p => w.StartsWith(p + ".", StringComparison.Ordinal))));
        // The kind of obstructions on sheets of one kind, and only it, is said by the sheet.
        Assert.Equal([], places.GroupBy(p => p).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.Equal([], places.Where(p => !wanted.Contains(p) && !wanted.Any(w => w.StartsWith(p + ".", StringComparison.Ordinal))));
        Assert.Equal([], FormPlan.Places.SelectMany(p => p.Sources).SelectMany(s => s.Children).Select(k => k.Name).Except(FormPlan.SourceColumns.Select(c => c.Heading)));

        static IEnumerable<string> Of(FormTable table) => table.Columns.Where(c => c is { IsReference: false, Part: < 2 })
            .Select(c => string.Join('.', table.Lists.SelectMany(l => l).Concat(c.Group ?? []).Concat(c.Path)));
    }

    private static IEnumerable<string> Leaves(Key key, string path)
    {
        Key block = key.Kind is ValueKind.List ? key.Item! : key;
        return block.Kind is ValueKind.Map
            ? block.Children.Concat(block.Variants.Values.SelectMany(v => v)).SelectMany(c => Leaves(c, path.Length == 0 ? c.Name : $"{path}.{c.Name}"))
            : [path];
    }

    [Fact]
    public void Same_form_same_bytes_and_an_empty_one_says_what_is_missing()
    {
        using MemoryStream first = new(), second = new();
        FormWorkbook.Write(FormSheets.Empty, first);
        FormWorkbook.Write(FormSheets.Empty, second);
        Assert.Equal(first.ToArray(), second.ToArray());
        ReadResult read = FormBook.Read(first.ToArray());
        Assert.Null(read.Project);
        Assert.All(read.Problems, p => Assert.Equal("R11", p.Code));
        Assert.Equal(["\"format\"", "\"layout_lines\"", "\"project\"", "\"walls\""], read.Problems.Select(p => p.Message.Split(' ')[0]).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_form_is_a_clean_workbook()
    {
        using var stream = new MemoryStream(new FormBook(BaseWall.Text).Bytes());
        using SpreadsheetDocument document = SpreadsheetDocument.Open(stream, false);
        Assert.Equal([], new OpenXmlValidator(FileFormatVersions.Office2019).Validate(document, TestContext.Current.CancellationToken).Select(e => $"{e.Part?.Uri} {e.Path?.XPath}: {e.Description}"));
    }

    [Fact]
    public void Columns_may_be_moved_rows_above_the_headings_removed_and_sheets_left_out()
    {
        var whole = new FormBook(BaseWall.Text);
        WallProject wanted = whole.Read().Project!;
        FormBook fewer = new FormBook(BaseWall.Text).Without("Openings").Without("Prices").Without("How to fill in").Without("From files");
        Assert.Equal(ProjectMeaning.Of(wanted), ProjectMeaning.Of(fewer.Read().Project!));
        // Names may be repeated in every row of a profile.
        FormBook repeated = new FormBook(BaseWall.Text).Set("Profiles", "wall", 0, wanted.Walls[0].Name).Set("Profiles", "wall", 1, wanted.Walls[0].Name);
        Assert.Equal(ProjectMeaning.Of(wanted), ProjectMeaning.Of(repeated.Read().Project!));
    }

    [Fact]
    public void Recheck_and_studies_have_a_text_to_work_on()
    {
        ReadResult read = new FormBook(BaseWall.Text).Read();
        string? copy = FixedBlock.Put(read, read.Project!, [("pinned", [])]);
        Assert.NotNull(copy);
        Assert.NotNull(ProjectReader.ReadText(copy, "copy").Project);
    }
}
