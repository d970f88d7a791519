using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Export.Solids;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Editing;

namespace PlankFit.Pages.Sessions;

/// <summary>The planks of a text of the job: all that a picture needs, and there before the rest.</summary>
/// <param name="Plan">Perhaps of the planks alone.</param>
internal sealed record LaidPlanks(int Turn, BottomPlan Plan)
{
    /// <summary>Pages fetch planks within so long after they are told of, where any shows them.</summary>
    private const int FetchMs = 40;

    /// <summary>And draw them in so long, without a graphics card.</summary>
    private const int DrawMs = 50;

    private readonly Lazy<ImmutableArray<PlankSolid>> solids = new(() => PlanSolids.Of(Plan));
    private readonly TaskCompletionSource fetched = new();

    public ImmutableArray<PlankSolid> Solids => solids.Value;

    /// <summary>The same as bytes.</summary>
    public byte[] Packed
    {
        get
        {
            lock (solids)
            {
                return field ??= PackedSolids.Of(Solids);
            }
        }
    }

    /// <summary>The bytes, for a page.</summary>
    public byte[] Fetched()
    {
        byte[] packed = Packed;
        fetched.TrySetResult();
        return packed;
    }

    /// <summary>Returns once a page has had them and the time to draw them, or soon where none asks: what goes on at once takes the cores from who draws.</summary>
    public void AreDrawn(CancellationToken stop)
    {
        try
        {
            if (fetched.Task.Wait(FetchMs, stop))
            {
                _ = stop.WaitHandle.WaitOne(DrawMs);
            }
        }
        catch (OperationCanceledException)
        {
            // Whoever stops has no use for them.
        }
    }
}

/// <summary>A text of the job that everything was worked out by.</summary>
/// <param name="Said">What the change did, against the plan before it was begun.</param>
internal sealed record Laid(
    LaidPlanks Planks,
    BottomPlan Plan,
    ImmutableArray<Finding> Findings,
    ImmutableArray<string> Said
)
{
    private readonly Dictionary<LengthUnit, Laid> inOthers = [];

    /// <param name="early">Its planks, where they were shown before the rest.</param>
    /// <param name="shown">Of which there is a plan.</param>
    /// <param name="against">The plan before the change; null where there was none.</param>
    public static Laid Of(LaidPlanks? early, int turn, ShownJob shown, BottomPlan? against)
    {
        BottomPlan plan = shown.Plan!;
        return new(early ?? new(turn, plan), plan, shown.Findings, TextLaying.Said(against, plan))
        {
            Shown = shown,
            Against = against,
        };
    }

    public int Turn => Planks.Turn;

    /// <summary>What it was laid as, by which it is told in other units.</summary>
    public required ShownJob Shown { get; init; }

    /// <summary>The plan before the change; null where there was none.</summary>
    public BottomPlan? Against { get; init; }

    /// <summary>The same told in other units, the planks as they are; worked out when it is first asked for.</summary>
    /// <param name="units">mm, or ft for feet and inches; the job's own where it is neither.</param>
    public Laid In(string? units)
    {
        Job job = Plan.Job;
        LengthUnit unit = ShownLength.Unit(job, units);
        if (unit == job.Units)
        {
            // Nobody waits for what another page looks at in other units.
            return this;
        }

        lock (inOthers)
        {
            if (!inOthers.TryGetValue(unit, out Laid? other))
            {
                inOthers[unit] = other = Told(unit, Shown.In(unit, CancellationToken.None));
            }

            return other;
        }
    }

    /// <summary>What cannot be told in those units stays in the job's own, and says so.</summary>
    private Laid Told(LengthUnit unit, ShownJob shown) =>
        shown.Plan is { } plan && plan.Job.Units == unit
            ? new(
                Planks,
                plan,
                shown.Findings,
                Against is null ? [] : TextLaying.Said(Against, plan)
            )
            {
                Shown = shown,
            }
            : this with
            {
                Findings =
                [
                    new(
                        Severity.Warning,
                        "lengths shown",
                        $"what was worked out could not be told in {LengthUnits.Name(unit)}: all lengths here are in {LengthUnits.Name(Plan.Job.Units)}, as the job has them. Please report it with the job's two files"
                    ),
                    .. Findings,
                ],
            };
}
