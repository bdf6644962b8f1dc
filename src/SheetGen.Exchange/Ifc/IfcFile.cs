using System.Globalization;
using System.Text;
using SheetGen.Exchange.Common;
using SheetGen.Exchange.Scene;

namespace SheetGen.Exchange.Ifc;

/// <summary>
/// nails.ifc: the finished layout as IFC 4.3 (ISO 16739-1:2024, schema IFC4X3_ADD2) in clear text. Lengths are in the project's unit, x east, y north,
/// z up. docs/exchange.md says which entity stands for what.
/// </summary>
internal static class IfcFile
{
    public const string FileName = "nails.ifc";

    public static byte[] Make(ExchangeInput input)
    {
        var model = new IfcModel(input);
        var units = new IfcUnits(model);
        var shapes = new IfcShapes(model);
        var properties = new IfcProperties(model, units);
        var places = new IfcPlaces(model, units, shapes, properties);
        var alignments = new IfcAlignments(model, shapes, properties, places);
        IReadOnlyList<SceneItem> scene = SceneBuilder.Build(input);
        new IfcNails(model, shapes, properties, places, alignments).Add(scene);
        new IfcFacings(model, shapes, properties, places).Add(scene);
        new IfcObstructions(model, shapes, properties, places).Add(scene);
        alignments.Close();
        places.Close();
        return Encoding.ASCII.GetBytes(Header(input, model.Frame) + model.Step + "ENDSEC;\nEND-ISO-10303-21;\n");
    }

    private static string Header(ExchangeInput input, PlanFrame frame)
    {
        string program = "SheetGen " + input.Run.Version;
        return "ISO-10303-21;\nHEADER;\n"
            + "FILE_DESCRIPTION(('ViewDefinition [Alignment-basedView]'),'2;1');\n"
            + $"FILE_NAME({StepFile.Quote(FileName)},'{frame.Date.ToString("s", CultureInfo.InvariantCulture)}',(''),(''),"
            + $"{StepFile.Quote(program)},{StepFile.Quote(program)},'');\n"
            + "FILE_SCHEMA(('IFC4X3_ADD2'));\nENDSEC;\nDATA;\n";
    }
}
