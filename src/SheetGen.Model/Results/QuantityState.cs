namespace SheetGen.Model.Results;

/// <summary>Whether a quantity stands for everything that it should.</summary>
public enum QuantityState
{
    /// <summary>Every wall and section that asks for it gave its part.</summary>
    Complete,

    /// <summary>A sum from which parts are missing: it is too small, and no sum over it is whole.</summary>
    Incomplete,

    /// <summary>No amount, because what it needs is given nowhere.</summary>
    Missing,

    /// <summary>No amount, because no wall asks for it (no coping, no panels).</summary>
    NotAsked,
}
