using System.IO.Compression;
using System.Text;
using SheetGen.Drawing.Templating;
using SheetGen.Layout.Clearance;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Quantities;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;
using SheetGen.ProjectFile;
using SheetGen.ProjectFile.Corridors;
using SheetGen.ProjectFile.Inputs.Inspecting;
using SheetGen.ProjectFile.Records;
using SheetGen.ProjectFile.Studies;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Revisions;
using SheetGen.Writers.Dxf;
using SheetGen.Writers.Dxf.Edited;
using SheetGen.Writers.Register;
using Xunit;

namespace SheetGen.Tests.Fuzz;

/// <summary>A kind of file that the program reads.</summary>
/// <param name="Weight">How many of a round of inputs are of this kind.</param>
/// <param name="Try">Changes a good file, reads it, and says whether it was taken. Throws where the outcome is neither a result nor faults with places.</param>
internal sealed record FuzzKind(string Name, int Weight, Func<Mutator, Random, bool> Try);

/// <summary>Every kind of file that the program reads, with good files of it.</summary>
internal sealed class FuzzKinds : IDisposable
{
    private static readonly string[] Walls =
    [
        Repository.Read("tests", "SheetGen.Tests", "Cases", "base-wall.yaml"), Repository.Read("tests", "SheetGen.Tests", "Cases", "bridge-wall.yaml"),
        Repository.Read("demo", "quarry-lane", "wall.yaml"), StarterProject.Text,
    ];

    private static readonly string PayItems = PayItemFile.BuiltIn(PayItemFile.BuiltInNames[0])!;
    private static readonly string TitleBlock = Encoding.UTF8.GetString(TitleBlockSamples.Drawn());
    private static readonly Lazy<string> Drawn = new(() => Encoding.UTF8.GetString(EditedWall.Shared.Drawing)), Plan = new(() => Encoding.UTF8.GetString(EditedWall.Shared.Plan));

    private static readonly string Layers = Repository.Read("templates", "layers", "standard.json"), Notes = Repository.Read("templates", "notes", "general.json"),
        Language = Repository.Read("templates", "text", "spanish.json");

    private readonly string _folder = Path.Combine(Path.GetTempPath(), "sheetgen-fuzz-" + Guid.NewGuid().ToString("N"));
    private readonly bool _layOut;

    /// <param name="layOut">Whether some of the project files that are taken are laid out, checked and measured too.</param>
    public FuzzKinds(bool layOut)
    {
        _layOut = layOut;
        Directory.CreateDirectory(_folder);
        All =
        [
            new("project file", 6, (m, r) => ProjectFile(m.Yaml(Of(r, Walls)), r)),
            new("form", 2, (m, _) => Form(m.Zip(FuzzSamples.Form.Value))),
            new("pay items", 2, (m, _) => Items(m.Yaml(PayItems))),
            new("layer list", 2, (m, r) => Template(m.Json(Layers), TemplateReader.WithLayers, TemplateCheck.OfLayers)),
            new("note set", 1, (m, r) => Template(m.Json(Notes), TemplateReader.WithNotes, TemplateCheck.OfNotes)),
            new("language", 1, (m, r) => Template(m.Json(Language), TemplateReader.WithLanguage, TemplateCheck.OfLanguage)),
            new("title block", 4, (m, r) => TitleBlockOf(r.Next(4) == 0 ? m.BinaryDxf(TitleBlock) : m.Dxf(TitleBlock))),
            new("base drawing", 6, (m, r) => Beside("base.dxf", r.Next(4) == 0 ? m.BinaryDxf(FuzzSamples.Base) : m.Dxf(FuzzSamples.Base), FuzzSamples.OnDrawing)),
            new("LandXML", 6, (m, r) => Beside("road.xml", Encoding.UTF8.GetBytes(m.Xml(Of(r, FuzzSamples.LandXml))), FuzzSamples.OnLandXml)),
            new("table", 6, (m, r) => Table(m, r)),
            new("inspected file", 3, (m, r) => Inspected(m, r)),
            new("edited drawing", 1, (m, r) => Edited(m.Dxf(r.Next(16) == 0 ? Drawn.Value : Plan.Value))),
            new("as-built record", 3, (m, r) => Record(m.Csv(FuzzSamples.Record.Value))),
            new("results", 3, (m, r) => Results(m, r)),
            new("study", 2, (m, r) => Study(m.Yaml(FuzzSamples.Study))),
            new("corridor", 2, (m, r) => Corridor(m.Yaml(FuzzSamples.Corridor))),
            new("kept state", 2, (m, r) => State(m.Json(FuzzSamples.State))),
        ];
    }

    public IReadOnlyList<FuzzKind> All { get; }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string Of(Random random, IReadOnlyList<string> texts) => texts[random.Next(texts.Count)];

    private string With(string name, byte[] bytes)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private string With(string name, string text) => With(name, Encoding.UTF8.GetBytes(text));

    private bool ProjectFile(string wall, Random random)
    {
        ReadResult read = ProjectReader.ReadText(wall, "wall.yaml");
        Assert.Equal(read.Project is null, read.Problems.Any(p => p.Severity == Severity.Error));
        HavePlaces(read.Problems, ("wall.yaml", wall));
        if (_layOut && random.Next(40) == 0 && read.Project is { } project)
            LayOut(project);
        return read.Project is not null;
    }

    /// <summary>A workbook in place of a project file.</summary>
    private bool Form(byte[] bytes)
    {
        string path = With("wall.xlsx", bytes);
        ReadResult read = ProjectReader.Read(path);
        Assert.Equal(read.Project is null, read.Problems.Any(p => p.Severity == Severity.Error));
        HavePlaces(read.Problems, (path, null));
        return read.Project is not null;
    }

    private static bool Items(string items)
    {
        var said = new List<Problem>();
        object? set = PayItemFile.Read(items, "pay.yaml", LengthUnit.Foot, said);
        HavePlaces(said, ("pay.yaml", items));
        return Outcome(set, said);
    }

    private static bool Template(
        string json, Func<DrawingTemplates, string, DrawingTemplates> parse, Func<DrawingTemplates, JsonPlaces, IReadOnlyList<TemplateCheck.Fault>> check)
    {
        try
        {
            DrawingTemplates own = parse(TemplateReader.Default(), json);
            JsonPlaces places = JsonPlaces.In(json);
            IReadOnlyList<TemplateCheck.Fault> faults = check(own, places);
            Assert.All(faults, f => Assert.True(places.Of(f.Path).Line >= 1 && f.Message.Length > 0));
            // What a run would do with it.
            Language words = own.Language.WithZone(null);
            Assert.All(Enum.GetValues<Phrase>(), p => Assert.NotNull(words.Say(p, "1", "2", "3")));
            Assert.NotNull(words.Sentence("section A: 8 nails have their heads below the finished grade"));
            return faults.Count == 0;
        }
        catch (FormatException e)
        {
            Assert.NotEqual("", e.Message);
            return false;
        }
    }

    private static bool TitleBlockOf(byte[] drawing)
    {
        var problems = new List<Problem>();
        object? block = TitleBlockFile.Read(drawing, "title.dxf", problems);
        HavePlaces(problems, ("title.dxf", null));
        return Outcome(block, problems);
    }

    /// <summary>A project file that takes from a changed file beside it.</summary>
    private bool Beside(string name, byte[] bytes, string yaml)
    {
        string file = With(name, bytes), project = With("wall.yaml", yaml);
        ReadResult read = ProjectReader.Read(project);
        Assert.Equal(read.Project is null, read.Problems.Any(p => p.Severity == Severity.Error));
        HavePlaces(read.Problems, (file, null), (project, yaml));
        return read.Project is not null;
    }

    private bool Table(Mutator mutator, Random random)
    {
        (string table, string yaml) = FuzzSamples.Tables[random.Next(FuzzSamples.Tables.Count)];
        return Beside("table.csv", Encoding.UTF8.GetBytes(mutator.Csv(table)), yaml);
    }

    /// <summary>What <c>inspect</c> says of a file, and the project file that <c>start --from</c> writes around it, which must read.</summary>
    private bool Inspected(Mutator mutator, Random random)
    {
        string path = random.Next(3) switch
        {
            0 => With("seen.dxf", mutator.Dxf(Of(random, FuzzSamples.Drawings))),
            1 => With("seen.xml", mutator.Xml(Of(random, FuzzSamples.LandXml))),
            _ => With("seen.csv", mutator.Csv(FuzzSamples.Tables[random.Next(FuzzSamples.Tables.Count)].Table)),
        };
        Inspection inspection = Inspection.Of(path);
        HavePlaces(inspection.Problems, (path, null));
        if (!inspection.IsReadable)
        {
            Assert.NotEmpty(inspection.Problems);
            return false;
        }
        Assert.NotEmpty(inspection.Lines);
        if (StartFrom.Text(inspection, Path.GetFileName(path)) is { } text)
        {
            string project = With("wall.yaml", text);
            ReadResult read = ProjectReader.Read(project);
            HavePlaces(read.Problems, (path, null), (project, text));
            Assert.DoesNotContain(read.Problems, p => p.Code.StartsWith('Y'));
        }
        return true;
    }

    private static bool Edited(byte[] drawing)
    {
        EditedWall wall = EditedWall.Shared;
        var problems = new List<Problem>();
        DrawingReading? reading = EditedDrawing.Read(drawing, "edited.dxf", wall.Project, wall.Layout, wall.Sheets, problems);
        HavePlaces(problems, ("edited.dxf", null));
        Assert.True(reading is not null || problems.Any(p => p.Severity == Severity.Error));
        if (reading is not null)
            FiniteNumber.Of(wall.Edit(reading).Layout);
        return reading is not null;
    }

    private bool Record(string record)
    {
        EditedWall wall = EditedWall.Shared;
        var problems = new List<Problem>();
        IReadOnlyList<AsBuiltNail>? drilled = AsBuiltRecord.Read(record, "record.csv", wall.Project, wall.Layout, problems);
        HavePlaces(problems, ("record.csv", record));
        if (_layOut && drilled is not null)
            AsBuilt.Of(wall.Project, wall.Layout, drilled, AsBuilt.Tolerances.Default(LengthUnit.Foot));
        return Outcome(drilled, problems);
    }

    /// <summary>The folder of a build that <c>compare</c> reads: its nails, findings and tables, one of them changed.</summary>
    private bool Results(Mutator mutator, Random random)
    {
        int which = random.Next(4);
        string nails = With("nails.csv", which == 0 ? mutator.Csv(FuzzSamples.Nails.Value) : FuzzSamples.Nails.Value);
        string findings = With("findings.json", which == 1 ? mutator.Json(FuzzSamples.Findings) : FuzzSamples.Findings);
        using var memory = new MemoryStream();
        using (var zip = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, string text) in FuzzSamples.QuantityTables)
            {
                // A change may part a sign of two code units; the writer puts a sign in its place, as that of the other files does.
                using var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
                writer.Write(which == 2 ? mutator.Csv(text) : text);
            }
        }
        string tables = With("tables.zip", which == 3 ? mutator.Bytes(memory.ToArray()) : memory.ToArray());
        var problems = new List<Problem>();
        object? state = ResultFolder.Read(nails, "before", false, problems);
        HavePlaces(problems, (nails, null), (findings, null), (tables, null));
        return Outcome(state, problems);
    }

    private bool Study(string text)
    {
        string project = With("wall.yaml", Walls[0]), path = With("study.yaml", text);
        StudyResult result = StudyReader.Read(project, path);
        HavePlaces(result.Problems, (path, text), (project, Walls[0]));
        return Outcome(result.Study, result.Problems);
    }

    private bool Corridor(string text)
    {
        string path = With("corridor.yaml", text);
        CorridorResult result = CorridorReader.Read([path]);
        HavePlaces(result.Problems, (path, text));
        return Outcome(result.Corridor, result.Problems);
    }

    private static bool State(string json) => CorridorJson.State(Encoding.UTF8.GetBytes(json)) is not null;

    private static bool Outcome(object? result, IReadOnlyList<Problem> problems)
    {
        Assert.Equal(result is null, problems.Any(p => p.Severity == Severity.Error));
        return result is not null;
    }

    private static void LayOut(WallProject project)
    {
        // Walls that a change has blown up are laid out by the long tests of the search; here a run has many inputs.
        double nails = project.Walls.Sum(w => (w.End - w.Start) * 40 / w.Sections.Min(s => s.HorizontalSpacing * s.VerticalSpacing));
        if (!(nails < 1500))
            return;
        NailLayout layout = Placer.Place(project, new PlacingOptions(false));
        ClearanceReport report = Checker.Check(project, layout);
        TakeOff.Measure(project, layout);
        Assert.Equal(layout.Nails.Count, layout.Nails.Select(n => n.Mark).Distinct().Count());
        Assert.All(report.Findings, f => Assert.NotEqual("", f.Message));
        FiniteNumber.Of(layout);
    }

    /// <summary>Every problem names one of the files, a place that can be in it, and says something on one line.</summary>
    private static void HavePlaces(IEnumerable<Problem> problems, params (string Name, string? Text)[] files)
    {
        foreach (Problem problem in problems)
        {
            (string name, string? text) = files.FirstOrDefault(f => f.Name == problem.Spot.File);
            Assert.True(name is not null, "a problem of no file that was read: " + problem);
            int lines = text?.Count(c => c is '\n' or '\r' or '\u2028' or '\u2029' or '\u0085') + 2 ?? int.MaxValue;
            Assert.True(problem.Spot.Line >= 1 && problem.Spot.Line <= lines && problem.Spot.Column >= 1, "a place that the file does not have: " + problem);
            Assert.NotEqual("", problem.Message);
            string shown = ProblemPrinter.Plain(problem);
            Assert.DoesNotContain('\n', shown);
        }
    }
}
