namespace SheetGen.Model.Results;

/// <summary>Quantities that a single production nail has: those that an item rounded nail by nail may use.</summary>
public static class NailAmounts
{
    public static IReadOnlyList<string> Names { get; } =
    [
        QuantityName.NailCount, QuantityName.PayLength, QuantityName.FaceLength, QuantityName.BackLength, QuantityName.Projection,
        QuantityName.BarLength, QuantityName.BarWeight, QuantityName.HoleLength, QuantityName.HoleVolume, QuantityName.GroutVolume,
    ];

    /// <summary>The nail's share of a quantity of <see cref="Names"/>; null of any other.</summary>
    public static double? Of(NailQuantity nail, string name) => name switch
    {
        QuantityName.NailCount => 1,
        QuantityName.PayLength => nail.PayLength,
        QuantityName.FaceLength or QuantityName.HoleLength => nail.Nail.Length,
        QuantityName.BackLength => nail.LengthFromBack,
        QuantityName.Projection => nail.Projection,
        QuantityName.BarLength => nail.BarLength,
        QuantityName.BarWeight => nail.Weight,
        QuantityName.HoleVolume => nail.HoleVolume,
        QuantityName.GroutVolume => nail.Grout,
        _ => null,
    };
}
