namespace PlankFit.Planking.Structure;

/// <summary>What the job asks of stiffness and mass.</summary>
public sealed record StructureSpec
{
    /// <summary>Even pressure on a panel, MPa; null where the user gives none, and then no panel is bent.</summary>
    public double? PressureMPa { get; init; }

    /// <summary>Between stringers, mm; null to take the widest of each station from what lies behind.</summary>
    public double? SpanMm { get; init; }

    public CouponSpec Coupon { get; init; } = new();

    public WoodRatios Wood { get; init; } = new();

    public FibreSpec Fibres { get; init; } = new();

    public static readonly StructureSpec Default = new();
}

/// <summary>A strip to build, lay on two rests and load in the middle. Its sizes are a proposal, no source.</summary>
public sealed record CouponSpec
{
    public double WidthMm { get; init; } = 50;

    public double SpanMm { get; init; } = 400;

    public double Newtons { get; init; } = 200;
}

/// <summary>What wood has across its grain, as parts of its stiffness along it: those of Douglas-fir, tangential, Wood Handbook, second hand.</summary>
public sealed record WoodRatios
{
    public double Across { get; init; } = 0.050;

    public double Shear { get; init; } = 0.078;

    public double Poisson { get; init; } = 0.449;

    /// <summary>Rolling shear, MPa: from memory.</summary>
    public const double RollingMPa = 60;
}

/// <summary>Glass and cured resin, by which a cloth's plies are reckoned: from memory.</summary>
public sealed record FibreSpec
{
    public double FibreMPa { get; init; } = 72000;

    public double ResinMPa { get; init; } = 3000;

    public const double FibreNu = 0.22;
    public const double ResinNu = 0.35;

    /// <summary>Of mat, whose fibres lie all ways: a third of what they would be along one, a proposal, no source.</summary>
    public const double MatPart = 1.0 / 3;
}
