namespace SheetGen.Model.PayItems;

/// <summary>A quantity that a pay expression uses: of the whole project, of one wall, or of one stage.</summary>
/// <param name="Name">Name of the quantity.</param>
/// <param name="Wall">Name of the wall; null for all.</param>
/// <param name="Stage">Name of the stage; null for all.</param>
public sealed record QuantityReference(string Name, string? Wall = null, string? Stage = null)
{
    /// <summary>True where it stands for the whole project.</summary>
    public bool IsTotal => Wall is null && Stage is null;

    /// <summary>As it is written: pay_length, pay_length[wall North], pay_length[stage 2].</summary>
    public override string ToString() => Wall is not null ? $"{Name}[wall {Wall}]" : Stage is not null ? $"{Name}[stage {Stage}]" : Name;
}
