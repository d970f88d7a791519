using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fastenings;

/// <summary>
/// The rule by which a layer is fastened, all lengths in mm on the layer's own surface. What a job leaves out comes from the plank's thickness t; the only
/// ones with a source are the spacing of 6 t (Whitfield's list of rules of thumb: nails 6 thicknesses apart) and the bite (see <see cref="NailBiteMm"/>);
/// all others are proposals.
/// </summary>
/// <param name="Name">Of what is driven, for the lists.</param>
/// <param name="BiteMm">Wanted in the timber behind; null where the nail rule gives it.</param>
/// <param name="VentMm">Spacing of vent holes; null for none.</param>
/// <param name="LengthsMm">That can be had, least first; empty for any.</param>
public sealed record FasteningRule(
    FasteningWay Put,
    string? Name,
    FasteningSpacing Spacing,
    FasteningClearances Clear,
    double? BiteMm,
    double? VentMm,
    ImmutableArray<double> LengthsMm,
    PullDownRule? PullDown
)
{
    public FasteningKind Kind => Put.Kind;

    public FastenerShape Shape => Put.Shape;

    public double PadMm => Put.PadMm;

    public double HoleMm => Put.HoleMm;

    public double SpacingMm => Spacing.MostMm;

    public double NearestMm => Spacing.LeastMm;

    public double EdgeMm => Clear.EdgeMm;

    public double EndMm => Clear.EndMm;

    public double JointMm => Clear.JointMm;

    public double BelowMm => Clear.BelowMm;

    public double MissMm => Clear.MissMm;

    public double MarginMm => Clear.MarginMm;

    public double OpenMm => Clear.OpenMm;

    public const double UsualMarginMm = 8;
    public const double UsualPadMm = 9;
    public const double UsualStrapMm = 1;
    public const double UsualHoleMm = 3;
    public const double LeastMissMm = 10;

    // In thicknesses of the plank.
    public const double UsualSpacing = 6;
    public const double UsualEnd = 3;
    public const double UsualEdge = 2;
    public const double UsualMiss = 1.5;

    /// <summary>Taken out when the glue has set.</summary>
    public bool IsTemporary =>
        Kind is FasteningKind.ScrewAndPad or FasteningKind.StapleThroughStrap;

    public static FasteningRule Of(FasteningSettings wish, double thicknessMm, bool isFirstSkin)
    {
        FasteningKind kind = wish.Kind ?? FasteningKind.ScrewAndPad;
        double spacing = wish.SpacingMm ?? (UsualSpacing * thicknessMm),
            end = wish.EndMm ?? (UsualEnd * thicknessMm);
        return new(
            new(
                kind,
                kind switch
                {
                    FasteningKind.ScrewAndPad => FastenerShape.Screw,
                    FasteningKind.StapleThroughStrap => FastenerShape.Staple,
                    _ => wish.Shape ?? FastenerShape.Screw,
                },
                wish.PadMm ?? PadOf(kind),
                wish.HoleMm ?? UsualHoleMm
            ),
            wish.Name,
            new(spacing, Math.Min(spacing, wish.NearestMm ?? (spacing / 3))),
            new(
                wish.EdgeMm ?? (UsualEdge * thicknessMm),
                end,
                wish.JointMm ?? end,
                wish.BelowMm ?? thicknessMm,
                wish.MissMm ?? Math.Max(LeastMissMm, UsualMiss * thicknessMm),
                wish.MarginMm ?? UsualMarginMm,
                wish.OpenMm ?? end
            ),
            wish.BiteMm,
            kind == FasteningKind.None ? wish.VentMm : null,
            wish.LengthsMm ?? [],
            isFirstSkin || kind == FasteningKind.None ? null : PullDownRule.Of(wish.PullDown, kind)
        );
    }

    /// <summary>
    /// The bite that the nail rule gives: 1 penny for each 1/8 in of planking (a small-craft association's list); a nail of p pence is 1/2 + p/4 in long (2d is
    /// 1 in; the trade's own measure), so that T of planking takes a nail of 2 T + 1/2 in, of which T + 1/2 in is in the timber.
    /// </summary>
    public static double NailBiteMm(double plankingMm) => plankingMm + (LengthUnits.MmPerInch / 2);

    internal static double PadOf(FasteningKind kind) =>
        kind switch
        {
            FasteningKind.ScrewAndPad => UsualPadMm,
            FasteningKind.StapleThroughStrap => UsualStrapMm,
            _ => 0,
        };
}

/// <summary>How a fastening is put in.</summary>
/// <param name="PadMm">Thickness of the pad, or of the strap.</param>
/// <param name="HoleMm">Diameter to drill, drawn on the pattern.</param>
public sealed record FasteningWay(
    FasteningKind Kind,
    FastenerShape Shape,
    double PadMm,
    double HoleMm
);

/// <summary>How far fastenings are from each other.</summary>
/// <param name="MostMm">From one to the next along a backing where there is a place for one.</param>
/// <param name="LeastMm">Between any two of a plank.</param>
public sealed record FasteningSpacing(double MostMm, double LeastMm);

/// <summary>What fastenings keep away from, the least, mm.</summary>
/// <param name="EdgeMm">The plank's seams; EndMm its net ends, JointMm its joints.</param>
/// <param name="BelowMm">Seams and joints of the skin next below.</param>
/// <param name="MissMm">The fastenings of all skins below.</param>
/// <param name="MarginMm">The edge of the timber behind.</param>
/// <param name="OpenMm">A place kept open.</param>
public sealed record FasteningClearances(
    double EdgeMm,
    double EndMm,
    double JointMm,
    double BelowMm,
    double MissMm,
    double MarginMm,
    double OpenMm
);

/// <summary>
/// Points between the timbers where a plank of the second skin or a later one is pulled down to the one below. There is no timber behind: a screw goes through
/// to a loose block, a staple into the skin below.
/// </summary>
/// <param name="SpacingMm">Along the plank; AcrossMm between rows. Unless given 75 and 50 mm (staple rows 2 to 3 in along and 1 1/2 to 2 in across: from memory).</param>
/// <param name="BiteMm">Wanted in the block, or in the skins below; null for two thirds of what is there (Gougeon: staples of 8 or 9 mm where three skins of 3 mm lie, 5 or 6 of the 6 mm below less the strap; a proposal).</param>
public sealed record PullDownRule(
    FasteningKind Kind,
    double SpacingMm,
    double AcrossMm,
    double PadMm,
    double? BiteMm,
    double BlockMm,
    ImmutableArray<double> LengthsMm
)
{
    public const double UsualSpacingMm = 75;
    public const double UsualAcrossMm = 50;
    public const double UsualBlockMm = 18;

    internal static PullDownRule? Of(PullDownWish? wish, FasteningKind ofLayer)
    {
        if (wish is { Off: true })
        {
            return null;
        }

        FasteningKind kind =
            wish?.Kind
            ?? (
                ofLayer == FasteningKind.ScrewAndPad
                    ? FasteningKind.ScrewAndPad
                    : FasteningKind.StapleThroughStrap
            );
        return new(
            kind,
            wish?.SpacingMm ?? UsualSpacingMm,
            wish?.AcrossMm ?? UsualAcrossMm,
            wish?.PadMm ?? FasteningRule.PadOf(kind),
            wish?.BiteMm,
            wish?.BlockMm ?? UsualBlockMm,
            wish?.LengthsMm ?? []
        );
    }
}
