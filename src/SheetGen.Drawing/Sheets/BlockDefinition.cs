using SheetGen.Drawing.Primitives;

namespace SheetGen.Drawing.Sheets;

/// <summary>A block, drawn about its own origin in millimetres.</summary>
/// <param name="Attributes">Its attributes in order.</param>
/// <param name="TakesLayer">True where its lines take the layer of the reference.</param>
public sealed record BlockDefinition(
    string Name, IReadOnlyList<Primitive> Primitives, IReadOnlyList<BlockAttribute> Attributes, bool TakesLayer)
{
    /// <summary>What a reference shows: the block's lines and the texts of its visible attributes.</summary>
    public IEnumerable<Primitive> Expand(BlockReference reference)
    {
        var transform = new PlaneTransform(reference.Scale, reference.Rotation * Math.PI / 180, reference.Position);
        foreach (Primitive primitive in Primitives)
        {
            Primitive seen = transform.Apply(primitive);
            yield return TakesLayer ? seen with { Layer = reference.Layer } : seen;
        }
        for (int i = 0; i < Attributes.Count; i++)
        {
            BlockAttribute a = Attributes[i];
            if (a.Tag == reference.Shown?.Tag)
            {
                yield return reference.Shown.Text;
                continue;
            }
            string value = reference.Attributes[i].Value;
            if (a.Visible && value.Length > 0)
                yield return transform.Apply(new Text(TakesLayer ? reference.Layer : a.Layer, a.Role, a.Position, a.Height, value, a.Align, a.Rotation));
        }
    }
}
