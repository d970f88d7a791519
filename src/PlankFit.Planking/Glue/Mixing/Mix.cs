namespace PlankFit.Planking.Glue.Mixing;

/// <summary>A resin with its hardener, as its data sheet has it.</summary>
/// <param name="Name">How the builder calls it.</param>
public sealed record Mix(string Name, MixRatio Ratio, MixClocks Clocks)
{
    public const double UsualPart = 0.7;
    public const double UsualWaste = 0.15;

    /// <summary>The part of either clock that a batch may use: a proposal, no source.</summary>
    public double UsePart { get; init; } = UsualPart;

    /// <summary>What stays in pots and rollers, is squeezed out of seams or falls on the floor, as a part of what is put on: a proposal, no source.</summary>
    public double Waste { get; init; } = UsualWaste;

    /// <summary>Of a kg of resin and hardener together; null where no price is given.</summary>
    public double? PricePerKg { get; init; }

    /// <summary>Solvent that the data sheet allows, as a part of the mix; 0 for none.</summary>
    public double Thinned { get; init; }

    /// <summary>Its clocks are of it as it is thinned; else they are of the mix as it comes, and no hour is worked out from them once it is thinned.</summary>
    public bool ClocksAreOfThinned { get; init; }

    /// <summary>Its clocks hold for what is put on.</summary>
    public bool IsTimed => Thinned <= 0 || ClocksAreOfThinned;

    /// <summary>Without what its clocks say of the time after the work, where they are not its own.</summary>
    public Mix Held => IsTimed ? this : this with { Clocks = new(Clocks.Pot, Clocks.Film) };

    /// <summary>The mass and the volume of a kg put on, waste among it.</summary>
    public double WithWaste(double kg) => kg * (1 + Waste);
}

/// <summary>How long a mix lasts: in the pot by its mass, spread as a film, and what comes after.</summary>
/// <param name="Pot">Until it thickens in the pot.</param>
/// <param name="Film">Until a film of it may no longer be closed or moved.</param>
public sealed record MixClocks(ClockLaw Pot, ClockLaw Film)
{
    /// <summary>While it can be cut with a knife, from the end of the work; null where the data sheet's is not given.</summary>
    public ClockWindow? Tacky { get; init; }

    /// <summary>While a next coat bonds without washing and keying.</summary>
    public ClockWindow? Recoat { get; init; }

    /// <summary>When it may be scraped and sanded.</summary>
    public ClockLaw? Sandable { get; init; }
}

/// <summary>Not before the one and not after the other.</summary>
public sealed record ClockWindow(ClockLaw From, ClockLaw To);
