namespace PlankFit.Planking.Wood;

public enum WoodKind
{
    Solid,
    Plywood,
}

/// <summary>
/// What is known of a wood at 12 % moisture, each figure with its own source; null where nothing is known. Short-time means of small clear pieces: a board
/// has knots and a slope of grain.
/// </summary>
/// <param name="Name">As the job writes it.</param>
/// <param name="Title">As a person says it.</param>
public sealed record Species(string Name, string Title, WoodKind Kind)
{
    /// <summary>Oven-dry weight over volume at 12 %, against water.</summary>
    public Sourced? Gravity { get; init; }

    /// <summary>As weighed in the workshop, kg/m³: what a job gives in place of a specific gravity.</summary>
    public Sourced? Density { get; init; }

    /// <summary>Modulus of elasticity in bending, MPa.</summary>
    public Sourced? Modulus { get; init; }

    /// <summary>Modulus of rupture, MPa.</summary>
    public Sourced? Rupture { get; init; }

    /// <summary>Shrinkage from green to oven-dry, percent, along the radius: across a quarter-sawn face.</summary>
    public Sourced? ShrinkRadial { get; init; }

    /// <summary>The same along the rings: across a flat-sawn face.</summary>
    public Sourced? ShrinkTangential { get; init; }

    /// <summary>Part of a dimension for each percent of moisture, radial; for plywood in its plane.</summary>
    public Sourced? MoveRadial { get; init; }

    /// <summary>The same, tangential; for plywood in its plane.</summary>
    public Sourced? MoveTangential { get; init; }

    /// <summary>Plywood's least dry radius over its thickness, as its maker gives it; null for the published table.</summary>
    public Sourced? LeastRadiusOverThickness { get; init; }

    /// <summary>Fibre strain at which a small clear piece breaks in a short test, MOR over MOE; null where either is not known.</summary>
    public double? BreakingStrain => Rupture?.Value / Modulus?.Value;

    /// <summary>Movement across the face for one percent of moisture; from the shrinkage where no coefficient is known.</summary>
    public Sourced? Movement(Grain grain) =>
        grain == Grain.Flat
            ? MoveTangential ?? Moisture.FromShrinkage(ShrinkTangential)
            : MoveRadial ?? Moisture.FromShrinkage(ShrinkRadial);

    /// <summary>Density with the water in it, kg/m³: the job's own as weighed, or 1000 G (1 + M/100).</summary>
    /// <param name="moisturePercent">M; the volume is taken as that at 12 %, which from 6 to 14 % is within one part in a hundred.</param>
    public double? KgPerCubicMetre(double moisturePercent) =>
        Density?.Value ?? (Gravity?.Value * 1000 * (1 + (moisturePercent / 100)));
}
