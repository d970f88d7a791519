using System.Collections.Immutable;

namespace PlankFit.Planking.Layers;

/// <summary>
/// The table by which a bend is judged, editable in the job file under [[limits.bend]]. Rows run from the gentlest bend to the hardest; a plank takes
/// the first row whose least radius over thickness it keeps.
/// </summary>
/// <param name="EdgeStrainPercent">Membrane strain K·w²/12 above which a plank must not be forced flat across; a proposal, no source.</param>
/// <param name="TwistShearPercent">Surface shear t·τ (thickness times twist) above which twist is named in the verdict; a proposal, no source.</param>
public sealed record BendLimits(
    ImmutableArray<BendLimit> Bend,
    double EdgeStrainPercent,
    double TwistShearPercent
)
{
    /// <summary>
    /// R/t 200: German timber code DIN 1052-1:1988, smallest radius of curved glued lamellas (6.6 m for 33 mm), as quoted in secondary sources.
    /// R/t 125: NDS glued laminated timber, softwood minimum (secondary source). R/t 100: the same for hardwood and southern pine.
    /// Below that a dry plank nears its breaking strain (0.5 % at R/t 100).
    /// </summary>
    public static readonly BendLimits Default = new(
        [
            new(200, "cold", "DIN 1052-1:1988, curved lamellas"),
            new(125, "cold, with care", "NDS glued laminated timber, softwood minimum"),
            new(100, "soak or steam to form", "NDS glued laminated timber, hardwood minimum")
            {
                Way = BendWay.SoakOrSteam,
            },
            new(0, "refuse: laminate thinner", "below the hardwood minimum")
            {
                Way = BendWay.LaminateThinner,
            },
        ],
        0.1,
        0.15
    );
}

/// <summary>One row: planks bent to no less than LeastRadiusOverThickness get this verdict.</summary>
public sealed record BendLimit(double LeastRadiusOverThickness, string Verdict, string Source)
{
    /// <summary>What the verdict asks of the builder.</summary>
    public BendWay Way { get; init; } = BendWay.Cold;
}

/// <summary>How a plank is got to lie.</summary>
public enum BendWay
{
    Cold,

    /// <summary>Soaked or steamed to form, then dried and metered before glue.</summary>
    SoakOrSteam,

    /// <summary>Made up of thinner ones.</summary>
    LaminateThinner,

    Refuse,
}
