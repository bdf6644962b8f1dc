using SheetGen.Dxf;

namespace SheetGen.Tests.Fuzz;

/// <summary>A title block drawing with an entity of every kind that is read.</summary>
internal static class TitleBlockSamples
{
    private static readonly byte[] Bytes = Make();

    public static byte[] Drawn() => Bytes;

    private static byte[] Make()
    {
        var document = new DxfDocument { Header = new DxfHeader { Units = DxfUnits.Millimetre } };
        var logo = new DxfBlock("LOGO");
        logo.Entities.Add(new DxfCircle("0", new(5, 5), 4));
        logo.Entities.Add(new DxfEllipse("0", new(10, 20), new(30, 0), 0.5));
        document.Blocks.Add(logo);
        document.Model.Add(new DxfPolyline("0", [new(new(0, 0)), new(new(800, 0), 0.2), new(new(800, 500)), new(new(0, 500))], true));
        document.Model.Add(new DxfLine("0", new(0, 50), new(800, 50)));
        document.Model.Add(new DxfArc("0", new(100, 100), 20, 10, 200));
        document.Model.Add(new DxfSolid("0", new(1, 1), new(2, 1), new(1, 2), new(2, 2)));
        document.Model.Add(new DxfText("0", new(10, 10), 3, "FIRM %%d"));
        document.Model.Add(new DxfMText("0", new(10, 30), 3, "TWO\nLINES"));
        document.Model.Add(new DxfHatch("0", [[new(new(3, 3)), new(new(5, 3)), new(new(5, 5))]]));
        document.Model.Add(new DxfInsert("0", "LOGO", new(700, 20)) { ScaleX = 2, ScaleY = 2, Rotation = 30 });
        document.Model.Add(new DxfAttributeDefinition("SHEET", "Sheet", new DxfText("0", new(750, 10), 5, "1")));
        document.Model.Add(new DxfAttributeDefinition("PHASE", "Phase", new DxfText("0", new(600, 10), 5, "95 PERCENT")));
        using var stream = new MemoryStream();
        DxfWriter.Write(document, stream);
        return stream.ToArray();
    }
}
