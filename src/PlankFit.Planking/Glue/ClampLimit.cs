using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Glue.Sessions;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>The clamps that a skin's planks must do with: a plank goes down only with as many as are free, and they are free again once its glue has cured.</summary>
/// <param name="OnHand">So many there are.</param>
/// <param name="Cure">Null where no clock says when glue has cured: then none comes free before the skin is done.</param>
/// <param name="Before">On planks of the layer that were down before the plan.</param>
internal sealed record ClampLimit(
    int OnHand,
    Held Held,
    PlankLayerPlan Layer,
    ClockLaw? Cure,
    DayTemperature Day,
    ImmutableArray<ClampsOn> Before
)
{
    /// <summary>Null where the job does not wait for clamps.</summary>
    public static ClampLimit? Of(StageGround ground, PlankLayerPlan layer)
    {
        CrewSpec crew = ground.Placing.Crew;
        if (!crew.WaitsForClamps || crew.ClampsOnHand is not { } hand)
        {
            return null;
        }

        Held held = ground.Holds.By(crew);
        return new(
            hand,
            held,
            layer,
            ground.Placing.Mix.Clocks.Sandable,
            ground.Placing.Day,
            [.. ClampCounts.Before(layer, ground.Amounts.Spec.Done, held)]
        );
    }

    /// <summary>What planks that go down one after the other take.</summary>
    public int Wanted(ReadOnlySpan<PlankShare> planks)
    {
        List<Plank> of = [];
        foreach (PlankShare share in planks)
        {
            of.Add(Layer.On(share.Id.Side).First(p => p.Id == share.Id));
        }

        return Held.Of(of);
    }

    /// <summary>When clamps come off planks that were all down by a moment.</summary>
    public double Off(double down) =>
        Cure is { } cure
            ? down + Math.Ceiling(ClockRun.Minutes(cure, null, Day, down))
            : double.PositiveInfinity;

    public ClampsInUse Begin()
    {
        var use = new ClampsInUse(this);
        foreach (ClampsOn on in Before)
        {
            use.Add(double.NegativeInfinity, Off(on.DownAt), on.Clamps);
        }

        return use;
    }
}

/// <summary>Which clamps are on until when. One builder of a skin's plan has it while it makes the plan.</summary>
internal sealed class ClampsInUse(ClampLimit limit)
{
    private readonly HandsInUse use = new(limit.OnHand);
    private readonly SortedSet<double> off = [];

    public void Add(double from, double to, int clamps)
    {
        if (clamps > 0)
        {
            use.Take(from, to, clamps);
            off.Add(to);
        }
    }

    /// <summary>Whether there are enough for planks as they would go down.</summary>
    public bool Hold(ReadOnlySpan<PlankShare> planks, BatchPlacing.Placed placed) =>
        limit.Wanted(planks) is var wanted
        && (
            wanted == 0 || use.Free(placed.Planks[0].SetAt, limit.Off(placed.Clocks.DownAt), wanted)
        );

    /// <summary>Whether clamps leave less than half of a batch of what could be in it otherwise, and more of them come off later.</summary>
    /// <param name="free">What could be in it for hands and clocks.</param>
    /// <param name="held">What there are clamps for now.</param>
    public bool IsWorthWaiting(ReadOnlySpan<PlankShare> free, int held, double now)
    {
        if (2 * held >= free.Length || !FreeAfter(now).Any())
        {
            return false;
        }

        // No more than all clamps there are would hold.
        int most = free.Length;
        while (most > held && limit.Wanted(free[..most]) > limit.OnHand)
        {
            most--;
        }

        return 2 * held < most;
    }

    public void Take(ReadOnlySpan<PlankShare> planks, BatchPlacing.Placed placed) =>
        Add(placed.Planks[0].SetAt, limit.Off(placed.Clocks.DownAt), limit.Wanted(planks));

    /// <summary>When some come free after a moment; never for those that stay on.</summary>
    public IEnumerable<double> FreeAfter(double at) => off.Where(o => o > at && double.IsFinite(o));
}
