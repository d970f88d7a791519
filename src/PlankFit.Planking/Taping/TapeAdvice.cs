using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;

namespace PlankFit.Planking.Taping;

/// <summary>What to tape first, and what may be sawn now, if [trust] is right.</summary>
/// <param name="Wishes">The few readings that bring most, in order.</param>
/// <param name="Edges">Then, as planks go on: the edges of fitted planks that bring most.</param>
/// <param name="Planks">Every plank whose length hangs on the table by slopes, both sides.</param>
/// <param name="Others">Planks that go by no slope, such as corner pieces: fitted in place.</param>
public sealed record TapeAdvice(
    ImmutableArray<TapeWish> Wishes,
    ImmutableArray<TapeWish> Edges,
    ImmutableArray<PlankSureness> Planks,
    ImmutableArray<PlankId> Others
)
{
    /// <summary>What was read and is to be read again before anything is sawn: slips first.</summary>
    public ImmutableArray<TapeWish> Again { get; init; } = [];

    /// <summary>By how much a tape between a plank's marks may differ from the check sheet, 19 times in 20.</summary>
    public ImmutableDictionary<PlankId, CheckLimits> Limits { get; init; } =
        ImmutableDictionary<PlankId, CheckLimits>.Empty;

    /// <summary>Why planks that were offered up do not fit.</summary>
    public ImmutableArray<FitVerdict> Verdicts { get; init; } = [];
}

/// <summary>A reading that is worth while.</summary>
/// <param name="ExpectedMm">What it should read, by all that is known.</param>
/// <param name="LimitMm">By which it may differ from that, 19 times in 20, if [trust] is right.</param>
/// <param name="Brings">The planks that it makes surest; null where it makes many a little surer.</param>
public sealed record TapeWish(TapePlace Place, double ExpectedMm, double LimitMm, BroughtTo? Brings)
{
    /// <summary>Of a seam, where its ends are set out.</summary>
    public SeamMarks? Marks { get; init; }

    /// <summary>It was read already, and the reading put aside.</summary>
    public bool IsSlip { get; init; }
}

/// <summary>A run of planks of one side and layer, and how sure the least sure of them is before and after, mm, 19 times in 20.</summary>
public sealed record BroughtTo(PlankId First, PlankId Last, double FromMm, double ToMm);

/// <summary>Limits of a plank's readings on the check sheet, mm; null where a reading hangs on the table by no slope.</summary>
public sealed record CheckLimits(double? ForwardSeamMm, double? AfterSeamMm, double? DiagonalMm);

/// <summary>A plank's length.</summary>
/// <param name="WithinMm">19 times in 20, by all that is known.</param>
/// <param name="WishedMm">The same once all that is wished for has been taped.</param>
/// <param name="LeftLongMm">By how much its ends are left long at the least; null where both are fitted.</param>
public sealed record PlankSureness(
    PlankId Id,
    double WithinMm,
    double WishedMm,
    double? LeftLongMm,
    bool IsDone,
    bool IsSureEnough
);
