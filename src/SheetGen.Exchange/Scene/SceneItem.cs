using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Scene;

/// <summary>A thing of the model with its shape.</summary>
/// <param name="Key">What its id is made from, see <see cref="Common.ItemKey"/>.</param>
/// <param name="Bodies">Its shapes; empty where nothing of it can be drawn.</param>
internal abstract record SceneItem(string Key, string Name, IReadOnlyList<Body> Bodies)
{
    /// <summary>The bar of a nail, from the back of the hole to the end of its projection.</summary>
    public sealed record Bar(Nail Nail, NailQuantity Amounts, double Diameter, Body Body) : SceneItem(Common.ItemKey.Bar(Nail.Mark), Nail.Mark, [Body]);

    /// <summary>The grouted hole of a nail, from the face to its back.</summary>
    public sealed record Hole(Nail Nail, NailQuantity Amounts, Body Body) : SceneItem(Common.ItemKey.Hole(Nail.Mark), Nail.Mark, [Body]);

    /// <summary>The temporary shotcrete of a section.</summary>
    public sealed record Shotcrete(SectionQuantities Section, IReadOnlyList<Body> Shape)
        : SceneItem(Common.ItemKey.Shotcrete(Section.Wall, Section.Section), $"{Section.Wall.Name} {Section.Section.Name} shotcrete", Shape);

    /// <summary>The permanent facing of a section where it is not of panels.</summary>
    public sealed record PermanentFacing(SectionQuantities Section, IReadOnlyList<Body> Shape)
        : SceneItem(Common.ItemKey.Facing(Section.Wall, Section.Section), $"{Section.Wall.Name} {Section.Section.Name} facing", Shape);

    /// <summary>A precast panel.</summary>
    public sealed record FacingPanel(Panel Panel, IReadOnlyList<Body> Shape) : SceneItem(
        Common.ItemKey.Panel(Panel),
        FormattableString.Invariant($"{Panel.Wall.Name} {Panel.Section.Name} panel {Panel.Leg + 1}-{Panel.Column}-{Panel.Course}"), Shape);

    /// <summary>An obstruction; a boundary is an upright surface without thickness.</summary>
    public sealed record Obstacle(Obstruction Obstruction, IReadOnlyList<Body> Shape)
        : SceneItem(Common.ItemKey.Obstruction(Obstruction.Name), Obstruction.Name, Shape);
}
