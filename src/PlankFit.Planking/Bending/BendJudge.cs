using System.Collections.Immutable;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Bending;

/// <summary>
/// By what a bend of one layer's planks is judged: rows of radius over thickness, and, where the wood is known, the strain that it is trusted with.
/// A plank takes the harder verdict of the two, so that knowing the wood never makes a verdict gentler.
/// </summary>
/// <param name="Rows">From the gentlest to the hardest.</param>
/// <param name="ColdStrain">Fibre strain trusted to a cold bend: 1 on the scale of the strain index; null where no wood is named.</param>
/// <param name="Basis">Where ColdStrain comes from, in words.</param>
public sealed record BendJudge(
    ImmutableArray<BendLimit> Rows,
    double EdgeStrainPercent,
    double TwistShearPercent,
    double? ColdStrain,
    string Basis
)
{
    /// <summary>The judge of another thickness: plywood's limits go by it.</summary>
    private Func<double, BendJudge> Again { get; init; } =
        _ =>
            throw new InvalidOperationException(
                "a judge that no job gave knows one thickness only"
            );

    /// <summary>
    /// The breaking strain of the wood for which the radii of the codes are meant, softwood of glued beams: that of Douglas-fir, MOR 85 over MOE 13400 MPa.
    /// A row's radius, as a part of it, is what the row trusts any other wood with. A proposal, no source.
    /// </summary>
    private const double CodeBreakingStrain = 85.0 / 13400;

    /// <summary>Knots, sloping grain or very dry wood halve what clear wood takes: common practice, no source.</summary>
    private const double Knotty = 0.5;

    /// <summary>Soaked or steamed plywood goes to this part of its least dry radius: a proposal, no source.</summary>
    private const double SoakedPlywood = 0.75;

    /// <summary>Veneer thinner than this is not sawn by a boatbuilder, mm: our own bound, no source.</summary>
    public const double ThinnestLaminationMm = 1.5;

    /// <summary>A radius on the limit is within it, whatever the last digit says.</summary>
    private const double Noise = 1e-9;

    public static BendJudge Of(PlankingJob job, PlankLayerSpec layer)
    {
        BendLimits limits = job.Limits;
        if (job.Timber?.Of(layer) is not { } species)
        {
            return new(limits.Bend, limits.EdgeStrainPercent, limits.TwistShearPercent, null, "")
            {
                Again = t => Of(job, layer with { ThicknessMm = t }),
            };
        }

        bool plywood = species.Kind == WoodKind.Plywood;
        ImmutableArray<BendLimit> rows = plywood
            ? Plywood(limits, species, layer.ThicknessMm, job.Timber.FaceGrain)
            : limits.Bend;
        double ratio = rows[0].LeastRadiusOverThickness;
        double knots = job.Timber.Grade == BoardGrade.Knotty ? Knotty : 1;
        string halved = knots < 1 ? ", halved for knots" : "";
        (double? strain, string basis) = (ratio, plywood, species.BreakingStrain) switch
        {
            (<= 0, _, _) => ((double?)null, "the first row of the limits has no radius"),
            (_, false, { } breaking) => (
                breaking / (2 * ratio * CodeBreakingStrain) * knots,
                $"{NumberText.Trimmed(100 / (2 * ratio * CodeBreakingStrain), 0)} % of its breaking strain MOR/MOE{halved}"
            ),
            (_, true, _) => (1 / (2 * ratio), "the strain at its least dry radius"),
            _ => (knots / (2 * ratio), $"the strain at the first row's radius{halved}"),
        };
        return new(rows, limits.EdgeStrainPercent, limits.TwistShearPercent, strain, basis)
        {
            Again = t => Of(job, layer with { ThicknessMm = t }),
        };
    }

    /// <summary>
    /// The part of its bending strength that American timber codes leave to glued wood laid up to a radius, 1 − 2000 (t/R)² (secondary source); tests of
    /// 1969 found more left than this (Woodson and Wangaard, as quoted).
    /// </summary>
    public static double CurvatureFactor(double radiusOverThickness) =>
        Math.Max(0, 1 - (2000 / (radiusOverThickness * radiusOverThickness)));

    /// <summary>Strain over what a cold bend is trusted with; null where no wood is named.</summary>
    public double? Index(double strain) => strain / ColdStrain;

    /// <summary>The row that holds for a radius over thickness and the whole strain along the grain.</summary>
    public BendLimit Row(double radiusOverThickness, double strain)
    {
        foreach (BendLimit row in Rows)
        {
            if (Keeps(row, radiusOverThickness, strain))
            {
                return row;
            }
        }

        return Rows[^1];
    }

    /// <summary>
    /// The least number of equal laminations that bend cold; null where none does at <see cref="ThinnestLaminationMm"/> or more. Thinner laminations ease
    /// the bend only, not the strain of laying a flat plank on a curved bottom.
    /// </summary>
    public int? Laminations(double radiusMm, double edgeStrain, double thicknessMm)
    {
        for (int n = 2; thicknessMm / n >= ThinnestLaminationMm; n++)
        {
            double t = thicknessMm / n;
            BendJudge judge = Again(t);
            if (judge.Keeps(judge.Rows[0], radiusMm / t, (t / (2 * radiusMm)) + edgeStrain))
            {
                return n;
            }
        }

        return null;
    }

    private bool Keeps(BendLimit row, double radiusOverThickness, double strain)
    {
        double ratio = row.LeastRadiusOverThickness;
        return radiusOverThickness >= ratio * (1 - Noise)
            && (
                Index(strain) is not { } index
                || ratio <= 0
                || index <= Rows[0].LeastRadiusOverThickness / ratio * (1 + Noise)
            );
    }

    private static ImmutableArray<BendLimit> Plywood(
        BendLimits limits,
        Species species,
        double thicknessMm,
        FaceGrain face
    )
    {
        double ratio =
            species.LeastRadiusOverThickness?.Value
            ?? PlywoodRadii.LeastRadiusOverThickness(thicknessMm, face);
        string source = species.LeastRadiusOverThickness?.Source ?? PlywoodRadii.Source;
        return
        [
            new(ratio, limits.Bend[0].Verdict, source),
            new(
                SoakedPlywood * ratio,
                "soak or steam to form",
                "3/4 of the least dry radius: a proposal, no source"
            )
            {
                Way = BendWay.SoakOrSteam,
            },
            new(0, "refuse: laminate thinner", "below that") { Way = BendWay.LaminateThinner },
        ];
    }
}
