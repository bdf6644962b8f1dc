namespace SheetGen.Model;

/// <summary>Temporary shotcrete and permanent facing. Lengths in project units; null where not given.</summary>
public sealed record Facing
{
    /// <summary>Thickness of the temporary shotcrete.</summary>
    public double? Shotcrete { get; init; }

    public FacingKind Kind { get; init; } = FacingKind.None;

    /// <summary>False where the project file leaves the kind to its default.</summary>
    public bool IsKindStated { get; init; } = true;

    /// <summary>Thickness of the permanent facing.</summary>
    public double? Thickness { get; init; }

    /// <summary>Gap between temporary shotcrete and permanent facing.</summary>
    public double? Gap { get; init; }

    /// <summary>What the coping is, in words; null where none is asked for.</summary>
    public string? Coping { get; init; }
}
