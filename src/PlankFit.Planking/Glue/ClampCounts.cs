using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Glue;

/// <summary>What holds the planks of one session until their glue has cured.</summary>
/// <param name="PutOn">In it.</param>
/// <param name="AtOnce">The most that are on at one time in it, those of sessions before whose glue has not cured among them.</param>
public readonly record struct SessionClamps(int PutOn, int AtOnce);

/// <summary>Of a layer's planks that were down before the plan: so many are on until their glue has cured.</summary>
public readonly record struct ClampsOn(string Layer, double DownAt, int Clamps);

/// <summary>How many clamps, battens or staples a session wants: on a plank from end to end, no two further apart than the job says, from when it goes down until it has cured.</summary>
public static class ClampCounts
{
    private const double Hair = 1e-9;

    /// <summary>On a plank of that length, both ends among them.</summary>
    public static int Along(double lengthMm, double everyMm) =>
        1 + (int)Math.Ceiling((lengthMm / everyMm) - Hair);

    /// <summary>On planks in the order in which they go down, one over so many of them.</summary>
    public static int Over(IEnumerable<double> lengthsMm, double everyMm, int planksEach) =>
        lengthsMm.Chunk(planksEach).Sum(c => Along(c.Max(), everyMm));

    /// <summary>How many any session of a plan wants. What is on when is worked out once for all of them.</summary>
    public static Func<GlueSession, SessionClamps> Of(GluePlan plan)
    {
        if (plan.Spec is not { BetweenLayers: { } mix, Clock: { } clock })
        {
            return _ => default;
        }

        (double From, double To, int Clamps)[] on =
        [
            .. plan.Stages.SelectMany(s =>
                s.Batches.Where(b => b.Clamps > 0)
                    .Select(b => (b.Planks[0].SetAt, Off(s.Layer, b.Clocks.DownAt), b.Clamps))
            ),
            .. plan.ClampsBefore.Select(c =>
                (double.NegativeInfinity, Off(c.Layer, c.DownAt), c.Clamps)
            ),
        ];
        return session =>
            new(
                session.Batches.Sum(b => b.Clamps),
                session
                    .Batches.Where(b => b.Clamps > 0)
                    .Select(b => b.Planks[0].SetAt)
                    .Select(at => on.Where(c => c.From <= at && c.To > at).Sum(c => c.Clamps))
                    .DefaultIfEmpty(0)
                    .Max()
            );

        double Off(string layer, double down) =>
            mix.Clocks.Sandable is { } sandable
                ? down + Math.Ceiling(ClockRun.Minutes(sandable, null, clock.Temperature, down))
                : Next(plan, layer);
    }

    /// <summary>Where no clock says when a layer's glue has cured: when the next is begun, for then nothing may stand on it any more; never where none is.</summary>
    private static double Next(GluePlan plan, string layer) =>
        plan
            .Stages.SkipWhile(s => s.Layer != layer)
            .Skip(1)
            .Select(s =>
                s.Batches.Select(b => b.MixAt)
                    .Append(s.OnAt?.First ?? double.PositiveInfinity)
                    .Min()
            )
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min();

    /// <summary>A skin's batches with what holds their planks; as they are where fastenings do and the job names nothing else.</summary>
    internal static GlueStage On(GlueStage stage, Held held, PlankLayerPlan layer) =>
        stage with
        {
            Batches =
            [
                .. stage.Batches.Select(b =>
                    b with
                    {
                        Clamps = held.Of(
                            b.Planks.Select(p => layer.On(p.Id.Side).First(q => q.Id == p.Id))
                        ),
                    }
                ),
            ],
        };

    /// <summary>Of a layer's planks that the progress has as down.</summary>
    internal static IEnumerable<ClampsOn> Before(
        PlankLayerPlan layer,
        GlueProgress done,
        Held held
    ) =>
        layer
            .Starboard.Concat(layer.Port)
            .Where(p => done.DownAt(p.Id) is not null)
            .GroupBy(p => (p.Id.Side, At: done.DownAt(p.Id)!.Value))
            .Select(g => new ClampsOn(layer.Planks.Name, g.Key.At, held.Of(g)))
            .Where(c => c.Clamps > 0);

    /// <summary>Fewer than the plan wants are on hand.</summary>
    internal static IEnumerable<Finding> TooFew(GluePlan plan)
    {
        if (plan.Spec.Crew is not { ClampsOnHand: { } hand } crew || plan.Sessions.IsEmpty)
        {
            yield break;
        }

        Func<GlueSession, SessionClamps> clamps = Of(plan);
        GlueSession worst = plan.Sessions.MaxBy(s => clamps(s).AtOnce)!;
        int most = clamps(worst).AtOnce;
        if (most > hand)
        {
            yield return new(
                Severity.Warning,
                Subject.Of("[crew]") with
                {
                    Key = "crew.clamps-on-hand",
                },
                FormattableString.Invariant(
                    $"session {worst.Number} has {most} {crew.ClampsCalled} on at once, those whose glue has not cured among them, and {hand} are on hand: get {most - hand} more, or say wait-for-clamps = true, and no batch goes down before there are enough for it"
                )
            )
            {
                Rank = Rank.Know,
            };
        }
    }
}
