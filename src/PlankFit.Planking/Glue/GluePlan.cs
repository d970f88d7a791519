using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>Resin, glue and the order of work: what to buy, what to mix when, what must be so before what.</summary>
public sealed record GluePlan(
    GlueSpec Spec,
    ImmutableArray<AmountLine> Amounts,
    ImmutableArray<GlueStage> Stages,
    ImmutableArray<Finding> Findings
)
{
    public ImmutableArray<MixTotal> Totals { get; } = MixTotal.Of(Amounts);

    public ImmutableArray<FillerTotal> Fillers { get; } = FillerTotal.Of(Amounts);

    /// <summary>What holds planks that were down before the plan.</summary>
    public ImmutableArray<ClampsOn> ClampsBefore { get; init; } = [];

    /// <summary>Of all stages, in the order in which they are mixed.</summary>
    public IEnumerable<GlueBatch> Batches => Stages.SelectMany(s => s.Batches);

    /// <summary>How it shifts with temperature.</summary>
    public OtherDays OtherDays { get; init; } = OtherDays.None;

    /// <summary>Batches by the shift in which they are mixed.</summary>
    public ImmutableArray<GlueSession> Sessions { get; init; } = [];

    /// <summary>Layers that no session was found for, the first for the reason that its finding tells, the others because they come after it.</summary>
    public ImmutableArray<string> NotPlanned { get; init; } = [];

    /// <summary>Why the first of <see cref="NotPlanned"/> has no session, and what would do; null where all have one.</summary>
    public Finding? StoppedBy { get; init; }
}

/// <summary>One layer's work: the planks of a skin, or a cloth on both sides; what must be so before it begins and once it is done.</summary>
/// <param name="Layer">Its name.</param>
/// <param name="Batches">In the order in which they are mixed.</param>
/// <param name="Before">To be ticked before the first batch is mixed; <paramref name="After"/> once the last is down.</param>
public sealed record GlueStage(
    string Layer,
    Mix Mix,
    ImmutableArray<GlueBatch> Batches,
    ImmutableArray<HoldPoint> Before,
    ImmutableArray<HoldPoint> After
)
{
    /// <summary>Trimming of a cloth while it is tacky, a side each; none of a skin.</summary>
    public ImmutableArray<TrimSpan> Trims { get; init; } = [];

    /// <summary>Of a cloth's mix the part that primes the wood under it; 0 where it lies on no wood, or none is asked for.</summary>
    public double ForWood { get; init; }

    /// <summary>When the first part of it was on and when the last was, those that were so before the plan among them.</summary>
    public (double First, double Last)? OnAt { get; init; }

    /// <summary>A side of it was on before the plan at an hour that nobody wrote down: until when it bonds is not known.</summary>
    public bool IsTaken { get; init; }

    /// <summary>Minutes of work that no order with these hands can do without; 0 for a cloth.</summary>
    public double BoundMinutes { get; init; }

    /// <summary>Minutes of shifts from the first batch until the last is down.</summary>
    public double WorkMinutes { get; init; }

    /// <summary>When the next stage may begin, as far as clocks say.</summary>
    public double ReadyAt =>
        Batches
            .Select(b => b.Clocks.DownAt)
            .Concat(Trims.Select(t => t.DoneAt))
            .Concat(After.Select(h => h.NotBefore ?? 0))
            .Append(OnAt?.Last ?? 0)
            .Max();

    /// <summary>What is mixed for in it.</summary>
    public required GlueUse Use { get; init; }

    /// <summary>A cloth, or a coat over it.</summary>
    public bool IsCloth => Use is GlueUse.WettingOut or GlueUse.Weave;

    /// <summary>Which coat over the outermost cloth it is, from 1; 0 where it is none.</summary>
    public int Coat { get; init; }
}

/// <summary>One batch.</summary>
/// <param name="Name">B07.</param>
/// <param name="MixAt">When mixing begins, minutes from midnight of the first day, like all times here.</param>
/// <param name="Grams">Of resin and hardener together.</param>
/// <param name="Clocks">When it must be out of the pot and down, and when it is.</param>
public sealed record GlueBatch(
    string Name,
    string Layer,
    Side Side,
    double MixAt,
    double Grams,
    MixParts Parts,
    BatchTimes Clocks
)
{
    /// <summary>In the order in which they go down; none for cloth.</summary>
    public ImmutableArray<PlankTimes> Planks { get; init; } = [];

    /// <summary>Of cloth that it wets out, or of the outside that it fairs; 0 for planks and fillets.</summary>
    public double ClothMm2 { get; init; }

    /// <summary>Of a fillet; 0 for all else.</summary>
    public double LengthMm { get; init; }

    /// <summary>In the shop as mixing begins.</summary>
    public double Celsius { get; init; }

    /// <summary>Of it, what is not wanted and mixed since less cannot be measured.</summary>
    public double LeftGrams { get; init; }

    /// <summary>What holds its planks until the glue has cured, besides fastenings; 0 for cloth.</summary>
    public int Clamps { get; init; }

    /// <summary>Which of the side's batches of this cloth, from 1; 0 for planks.</summary>
    public int Course { get; init; }
}

/// <param name="OutAt">The pot is empty.</param>
/// <param name="OutBy">It must be empty.</param>
/// <param name="DownAt">The last is down.</param>
/// <param name="DownBy">It must be down.</param>
/// <param name="Warmer">Both where the shop is three degrees warmer than planned.</param>
public readonly record struct BatchTimes(
    double OutAt,
    double OutBy,
    double DownAt,
    double DownBy,
    ByWhen Warmer
);

/// <summary>When a batch must be out of the pot, and down.</summary>
public readonly record struct ByWhen(double OutBy, double DownBy);

/// <summary>When the glue for a plank is spread and the plank goes down.</summary>
public readonly record struct PlankTimes(PlankId Id, double SpreadAt, double SetAt, double DoneAt)
{
    public double Grams { get; init; }

    public int Fastenings { get; init; }
}

/// <summary>A side's cloth is trimmed: not before and not after, and when it is done.</summary>
public readonly record struct TrimSpan(
    Side Side,
    double NotBefore,
    double NotAfter,
    double At,
    double DoneAt
);

/// <summary>What a session may not pass.</summary>
/// <param name="What">In the builder's words, after which there is a box to tick.</param>
/// <param name="NotBefore">Null where no clock says.</param>
/// <param name="NotAfter">Null where it may wait.</param>
public sealed record HoldPoint(string What, double? NotBefore = null, double? NotAfter = null);

/// <summary>The solver's own bound on orders that hold whatever hour a batch is moved to, each clock at the shortest that it is in the session.</summary>
/// <param name="EndsAt">None of these ends before, minutes from midnight of the first day.</param>
/// <param name="Proved">It found one that ends then.</param>
public readonly record struct SearchBound(double EndsAt, bool Proved);

/// <summary>What is glued between two breaks.</summary>
/// <param name="From">When the first batch is mixed; <paramref name="To"/> when the last is down.</param>
/// <param name="ShiftTo">When the shift ends.</param>
public sealed record GlueSession(
    int Number,
    string Layer,
    double From,
    double To,
    double ShiftTo,
    ImmutableArray<GlueBatch> Batches
)
{
    /// <summary>What is mixed for in it.</summary>
    public required GlueUse Use { get; init; }

    /// <summary>A coat over cloth that is on.</summary>
    public bool IsCoat => Use == GlueUse.Weave;

    /// <summary>No order of these batches' work with these hands and clocks ends it sooner, each clock at the longest that it is in the session; null where it was not asked to be searched.</summary>
    public double? NoneEndsBefore { get; init; }

    /// <summary>What the search itself came to; null where less than a minute could be gained and it was not begun.</summary>
    public SearchBound? Searched { get; init; }

    public int Planks => Batches.Sum(b => b.Planks.Length);

    public int Fastenings => Batches.Sum(b => b.Planks.Sum(p => p.Fastenings));
}
