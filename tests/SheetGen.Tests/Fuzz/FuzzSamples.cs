using System.Text;
using SheetGen.Model.Corridors;
using SheetGen.ProjectFile.Records;
using SheetGen.Tests.Forms;
using SheetGen.Tests.Inputs;
using SheetGen.Tests.ProjectFile;
using SheetGen.Tests.Revisions;
using SheetGen.Writers.Register;

namespace SheetGen.Tests.Fuzz;

/// <summary>Good files of every kind, small so that many changed ones can be read.</summary>
internal static class FuzzSamples
{
    private const string Straight = "start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}\n    elements: [{line: 400}]";

    /// <summary>Drawings: one of our own writer with every entity of a title block, and a base drawing.</summary>
    public static IReadOnlyList<string> Drawings { get; } = [Encoding.UTF8.GetString(TitleBlockSamples.Drawn()), Base];

    /// <summary>What a base drawing has, written group by group.</summary>
    public static string Base => Groups(
        "0|SECTION|2|HEADER|9|$ACADVER|1|AC1015|9|$INSUNITS|70|2|0|ENDSEC|0|SECTION|2|TABLES|0|TABLE|2|LAYER|0|LAYER|2|A|70|0|62|7|6|CONTINUOUS|0|ENDTAB|0|ENDSEC|" +
        "0|SECTION|2|BLOCKS|0|BLOCK|8|0|2|CAP|10|0|20|0|30|0|0|LWPOLYLINE|5|30|8|0|90|4|70|1|10|-3|20|-3|10|3|20|-3|10|3|20|3|10|-3|20|3|0|CIRCLE|8|0|10|0|20|0|40|1|0|INSERT|8|0|2|PEG|10|1|20|1|0|ENDBLK|0|BLOCK|8|0|2|PEG|10|0|20|0|0|CIRCLE|8|0|10|0|20|0|30|0|40|0.5|0|ENDBLK|0|ENDSEC|" +
        "0|SECTION|2|ENTITIES|" +
        "0|LINE|5|1|8|WL|10|0|20|0|11|400|21|0|0|LWPOLYLINE|5|2|8|A|90|4|70|1|10|50|20|-20|10|70|20|-20|42|1|10|70|20|-10|10|50|20|-10|42|-1|" +
        "0|CIRCLE|5|3|8|A|10|90|20|-15|30|0|40|2.5|39|-20|0|ELLIPSE|5|4|8|A|10|120|20|-20|30|0|11|12|21|4|31|0|40|0.4|41|0|42|6.283185307179586|" +
        "0|SPLINE|5|5|8|A|70|12|71|2|72|12|73|9|40|0|40|0|40|0|40|1|40|1|40|2|40|2|40|3|40|3|40|4|40|4|40|4|41|1|41|0.7071|41|1|41|0.7071|41|1|41|0.7071|41|1|41|0.7071|41|1|" +
        "10|160|20|-20|30|0|10|160|20|-10|30|0|10|150|20|-10|30|0|10|140|20|-10|30|0|10|140|20|-20|30|0|10|140|20|-30|30|0|10|150|20|-30|30|0|10|160|20|-30|30|0|10|160|20|-20|30|0|" +
        "0|HATCH|5|6|8|A|10|0|20|0|30|0|210|0|220|0|230|1|2|SOLID|70|1|71|0|91|2|92|3|72|0|73|1|93|4|10|180|20|-20|10|190|20|-20|10|190|20|-10|10|180|20|-10|97|0|92|0|93|3|72|1|10|200|20|-20|11|210|21|-20|72|2|10|205|20|-20|40|5|50|0|51|180|73|1|72|1|10|200|20|-20|11|200|21|-20|97|0|75|0|76|1|98|0|" +
        "0|POLYLINE|5|7|8|U|66|1|70|8|0|VERTEX|8|U|10|220|20|-10|30|90|70|32|0|VERTEX|8|U|10|230|20|-12|30|95|70|32|0|SEQEND|8|U|" +
        "0|3DFACE|5|8|8|A|10|240|20|-10|30|90|11|250|21|-10|31|90|12|250|22|-20|32|100|13|240|23|-20|33|100|0|SOLID|5|9|8|A|10|260|20|-10|11|270|21|-10|12|260|22|-20|13|270|23|-20|" +
        "0|MESH|5|A|8|A|92|4|10|280|20|-10|30|90|10|290|20|-10|30|90|10|285|20|-20|30|95|10|285|20|-15|30|110|93|0|" +
        "0|TEXT|5|B|8|A|10|60|20|-15|40|1|1|P-1|0|MTEXT|5|C|8|A|10|90|20|-15|40|1|1|S\\P2|0|INSERT|5|D|8|B|66|1|2|CAP|10|310|20|-20|41|1|42|-1|50|30|0|ATTRIB|8|A|10|310|20|-20|40|1|1|C-7|2|MARK|0|SEQEND|8|A|" +
        "0|POINT|5|E|8|A|10|330|20|-12|30|95|0|ARC|5|F|8|A|10|350|20|-12|40|3|50|0|51|180|0|LINE|5|10|8|A|10|353|20|-12|11|347|21|-12|0|ENDSEC|0|EOF|");

    /// <summary>A project file that takes its line and its obstructions from base.dxf.</summary>
    public static string OnDrawing { get; } = InputFolder.Yaml("from_dxf: {file: base.dxf, layer: WL, station: 10+00}", "[[10+00, 118], [14+00, 118]]", "[10+00, 14+00]", bottom: "100", more:
        "obstructions:\n  - from_dxf: {file: base.dxf, layer: A, kind: solid, bottom: 90, top: 118, error: 0.05}\n  - from_dxf: {file: base.dxf, block: CAP, kind: shaft, bottom: 90, top: 118, name_attribute: MARK, names: station, name: C}\n  - from_dxf: {file: base.dxf, layer: U, kind: pipe, diameter: 24 in}\n");

    /// <summary>Alignments with curves, spirals, station equations, profiles and cross sections.</summary>
    public static IReadOnlyList<string> LandXml { get; } =
    [
        FhwaAlignment.LandXml(more: "<StaEquation staInternal=\"11250\" staBack=\"11250\" staAhead=\"11200\"/>" + FhwaAlignment.Profile + """
            <CrossSects>
            <CrossSect sta="11000"><CrossSectSurf name="EG"><PntList2D>-50 90 -10 98 10 102 40 108</PntList2D></CrossSectSurf></CrossSect>
            <CrossSect sta="11100"><CrossSectSurf name="EG"><PntList2D>-50 91 0 99 40 108</PntList2D></CrossSectSurf></CrossSect>
            </CrossSects>
            """),
        """
        <?xml version="1.0"?>
        <LandXML version="1.2"><Units><Imperial linearUnit="foot"/></Units>
        <CgPoints><CgPoint name="P1">1 2</CgPoint></CgPoints>
        <Alignments><Alignment name="Ramp" staStart="11000" length="1200"><CoordGeom>
        <Line><Start>0 0</Start><End>0 1000</End></Line>
        <Spiral spiType="clothoid" rot="cw" length="200" radiusStart="INF" radiusEnd="500"><Start>0 1000</Start><End>-13.286 1199.2</End></Spiral>
        </CoordGeom>
        <Profile name="P"><ProfSurf name="EG"><PntList2D>11000 100 11600 101 12200 99</PntList2D></ProfSurf><ProfAlign name="FG"><PVI>11000 118</PVI><CircCurve length="100" radius="5000">11500 120</CircCurve><PVI>12200 119</PVI></ProfAlign></Profile>
        <CrossSects><CrossSect sta="11200"><CrossSectSurf name="EG"><PntList2D>-50 91 0 99 40 108</PntList2D></CrossSectSurf></CrossSect></CrossSects>
        </Alignment></Alignments>
        <Surfaces><Surface name="EG"><Definition surfType="TIN"><Pnts><P id="1">0 0 0</P><P id="2">10 0 0</P><P id="3">0 10 0</P></Pnts><Faces><F>1 2 3</F></Faces></Definition></Surface></Surfaces>
        </LandXML>
        """,
    ];

    /// <summary>A project file that takes its line, its top and its cross sections from road.xml.</summary>
    public static string OnLandXml { get; } = InputFolder.Yaml("from_landxml: {file: road.xml}", "{from_landxml: {file: road.xml, profile: FG}}", "[110+50, 119+00]")
        .Replace("    bottom:", "    cross_sections: {from_landxml: {file: road.xml}}\n    bottom:", StringComparison.Ordinal);

    /// <summary>Tables, each with a project file that takes it from table.csv.</summary>
    public static IReadOnlyList<(string Table, string Yaml)> Tables { get; } =
    [
        ("Station,Elevation\n10+00,118\n10+50,119.5\n\"12+00\",121\n14+00,120\n", Top),
        ("sta;elev (ft)\r\n1000;118\r\n\"10+50\";119.5\r\n14+00;121\r\n", Top),
        ("# surveyed\nnorthing,easting,elevation\n0,0,118\n1,50,119.5\n0,400,121\n", Top),
        ("1,0,0,118,TOP\n2,-0.5,50,119.5,TOP\n9,0,400,121,TOP\n", Top),
        ("n,e\n0,0\n0,300\n50,386.6025403784439\n", InputFolder.Yaml("from_csv: {file: table.csv, station: 10+00}", "[[10+00, 118], [13+90, 118]]", "[10+00, 13+90]", bottom: "100")),
        ("name,northing,easting,top,depth,layer,to,PI,water depth\nB-1,-12,45,121,43,stiff clay,13,24,25\n,,,,,\"silty, sand\",43,,\nB-2,-20,110,122,40,sand,40,,\n", Borings),
        ("boring,station,offset,ground,bottom,soil,layer_bottom,plasticity index,water\nB-1,10+45,12,121,78,stiff clay,108,24,96\nB-1,,,,,silty sand,78,,\nB-2,11+10,20,122,82,sand,82,,\n", Borings),
    ];

    public static Lazy<string> Record { get; } = new(() => string.Join(',', AsBuiltRecord.Columns) + "\n" + string.Concat(EditedWall.Shared.Layout.Nails.Take(8).Select((n, i) => i % 4 == 3
        ? n.Mark + "\n"
        : FormattableString.Invariant($"{n.Mark},{n.Station + 0.05},{n.Elevation},{n.Splay},{n.Inclination},{n.Length},4.5,2026-01-15,\"wet, slow\"\n"))));

    /// <summary>A filled form.</summary>
    public static Lazy<byte[]> Form { get; } = new(() => new FormBook(Repository.Read("tests", "SheetGen.Tests", "Cases", "base-wall.yaml")).Bytes());

    public static Lazy<string> Nails { get; } = new(() => string.Join('\n', Repository.Read("demo", "quarry-lane", "expected", "nails.csv").Split('\n').Take(9)));

    public const string Findings = """
        {"format": 1, "units": "m", "input_hash": "d680", "layout": {"cover": [0, 0], "unresolved": [0, 0], "noted": [0, 0], "effort": [4, 4]},
          "findings": [
            {"id": "F-0001", "code": "nail-nail", "severity": "error", "wall": "Wall 2", "nails": ["A-1-01", "A-1-02"], "station": 6.5, "clear": 0.12, "required": 0.15, "message": "too close"},
            {"id": "F-0002", "code": "guidance", "severity": "warning", "wall": "Wall 2", "station": 6, "to_station": 30, "obstruction": "Light pole", "message": "heads below grade"}
          ], "help": [], "changes": []}
        """;

    public static IReadOnlyList<(string Name, string Text)> QuantityTables { get; } =
    [
        ("quantities.csv", "Name,Quantity,Unit,\"Wall 2, section A\",\"Wall 2, section B\"\nnail_length,Nail length,m,420.5,12\nface_area,Face,m2,180,\n"),
        ("bid.csv", "Item,Description,Unit,Bid quantity,Amount\n101,Soil nails,m,433,12990\n102,\"Facing, permanent\",m2,180,\n"),
    ];

    public const string Study = """
        format: 1
        title: Spacing
        prove: false
        vary:
          horizontal_spacing: [3.5, 4, 4.5 ft]
          inclination: {from: 10, to: 20, step: 5}
          lengths: [[24, 24, 20], [20, 20, 20]]
        """;

    public const string Corridor = """
        format: 1
        title: Cedar Creek corridor
        stage: 1
        contract: C-3
        coordinates: project grid
        walls:
          - {file: wall.yaml, name: Ramp A, stage: "2"}
          - walls/ramp-b.yaml
          - {file: ../ramp-c, prove: true}
        """;

    public static string State { get; } = Encoding.UTF8.GetString(CorridorJson.Bytes(new WallState
    {
        Name = "Ramp A",
        Outcome = WallOutcome.Built,
        Exit = 1,
        Version = "0.1.0",
        Program = "ab12",
        Options = "",
        Inputs = [new("wall.yaml", 900, "00ff")],
        Files = [new("nails.csv", 1200, "01fe")],
        Reach = [0, 0, 100, 100],
        Holes = [new("A-1-01", "W", 1005, 110, [0, 5, 110, -0.9, 0.1, -0.2, 20, 0.25, 0.01])],
        Figures = new WallFigures
        {
            Title = "Ramp A",
            Number = "1",
            Units = "ft",
            Revision = "0",
            Date = "2026-01-15",
            InputHash = "aa",
            Zone = "",
            Walls = ["W"],
            Statuses = new Dictionary<string, int> { ["grid"] = 40 },
            Production = 40,
            Verification = 1,
            Proof = 2,
            LeftOut = 0,
            NailLength = 800.5,
            Findings = new Dictionary<string, int> { ["error"] = 1 },
            Score = [new("cover", 0, 0), new("effort", 4, null)],
            IsProvenBest = true,
            LeastClear = 0.5,
            Quantities = [new("nail_length", "Nail length", "ft", 800.5, "complete")],
            PayItems = "generic",
            Bid = [new("101", "Soil nails", "ft", 801, 800.5, 0, 30, "complete", "")],
            Sheets = [new("S-1", "Elevation", "34x22")],
        },
    }));

    private static string Top => InputFolder.Yaml(Straight, "{from_csv: {file: table.csv, limit: 5 ft}}", "[10+00, 14+00]", bottom: "100");

    private static string Borings => InputFolder.Yaml(Straight, "[[10+00, 118], [14+00, 118]]", "[10+00, 14+00]", bottom: "100", more: "borings:\n  from_csv: {file: table.csv}\n");

    private static string Groups(string text) => text.Replace('|', '\n');
}
