using System.Text.Json;
using SheetGen.Model;
using SheetGen.Model.Geometry;

namespace SheetGen.Review.Data;

/// <summary>Obstructions and borings as the page draws and measures them, relative to the project's origin.</summary>
internal static class ThingData
{
    public static void Write(Utf8JsonWriter json, Obstruction obstruction, double required)
    {
        json.WriteString("name", obstruction.Name);
        json.WriteString("kind", obstruction.Kind.ToString().ToLowerInvariant());
        json.Number("required", required);
        json.WriteStartObject("facts");
        foreach ((string key, string value) in obstruction.Facts)
            json.WriteString(key, value);
        json.WriteEndObject();
        json.Objects("solids", obstruction.Solids, solid => Write(json, solid));
    }

    public static void Write(Utf8JsonWriter json, Boring boring)
    {
        json.WriteString("name", boring.Name);
        json.Array("at", boring.At.N, boring.At.E);
        json.Number("top", boring.Top);
        json.Number("bottom", boring.Bottom);
        json.NumberOrNull("water", boring.Water);
        json.Objects("layers", boring.Layers, layer =>
        {
            json.Number("to", layer.To);
            json.WriteString("name", layer.Name);
            json.NumberOrNull("pi", layer.PlasticityIndex);
        });
    }

    private static void Write(Utf8JsonWriter json, Solid solid)
    {
        switch (solid)
        {
            case CylinderSolid c:
                json.WriteString("shape", "cylinder");
                WriteAxis(c.End1, c.End2, c.Radius);
                break;
            case CapsuleSolid c:
                json.WriteString("shape", "capsule");
                WriteAxis(c.End1, c.End2, c.Radius);
                break;
            case PrismSolid prism:
                json.WriteString("shape", "prism");
                json.List("footprint", prism.Footprint, p => json.Array(p.N, p.E));
                json.Array("z", prism.Bottom, prism.Top);
                break;
            case BoundarySolid boundary:
                json.WriteString("shape", "plane");
                json.Array("a", boundary.End1.N, boundary.End1.E);
                json.Array("b", boundary.End2.N, boundary.End2.E);
                break;
            default:
                throw new InvalidOperationException("the page cannot draw a " + solid.GetType().Name);
        }

        void WriteAxis(Vector3D a, Vector3D b, double radius)
        {
            json.Point("a", a);
            json.Point("b", b);
            json.Number("r", radius);
        }
    }
}
