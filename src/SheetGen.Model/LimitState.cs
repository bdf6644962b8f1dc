namespace SheetGen.Model;

/// <summary>What may give way, in the order of load path from the ground to the head.</summary>
public enum LimitState
{
    /// <summary>Pullout of the bonded length behind a slip surface.</summary>
    Pullout,

    /// <summary>Tension of the bar.</summary>
    Bar,

    /// <summary>The head together with the pullout of the bonded length in front of a slip surface.</summary>
    Front,

    /// <summary>Bending of the temporary facing.</summary>
    Flexure,

    /// <summary>Punching of the temporary facing at the bearing plate.</summary>
    Punching,

    /// <summary>Bending of the permanent facing.</summary>
    PermanentFlexure,

    /// <summary>Punching of the permanent facing at the headed studs.</summary>
    PermanentPunching,

    /// <summary>Tension of the headed studs.</summary>
    Studs,
}
