using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Glue.Sessions;
using GlueMix = PlankFit.Planking.Glue.Mixing.Mix;

namespace PlankFit.Nesting.Sessions;

/// <summary>
/// A session of planks as tasks: of every batch its mixing, of every plank the spreading and the fitting. Which planks are in which batch stays; when each begins is
/// what is asked. Clocks are those of the session's worst moment, so that whatever hour a batch is moved to, it holds.
/// </summary>
internal sealed class SessionTasks
{
    private const double LookMinutes = 5;
    private readonly GlueSession session;
    private readonly List<GangTask> tasks = [];
    private readonly List<SessionRule> rules = [];
    private readonly List<SessionRule> loose = [];
    private readonly List<double> starts = [];
    private readonly Dictionary<PlankId, int> sets = [];

    /// <param name="nearer">The plank that one lies against, nearer the master; null for the master.</param>
    public SessionTasks(
        GlueSpec spec,
        GlueMix mix,
        GlueSession session,
        Func<PlankId, PlankId?> nearer
    )
    {
        this.session = session;
        CrewSpec crew = spec.Crew!;
        (double Least, double Most) film = Range(spec, mix, mix.Clocks.Film, null);
        foreach (GlueBatch batch in session.Batches)
        {
            int mixing = Add($"mix {batch.Name}", crew.MixMinutes, 1, batch.MixAt, []);
            (double Least, double Most) pot = Range(spec, mix, mix.Clocks.Pot, batch.Grams);
            List<SessionBound> clocks = [],
                longest = [];
            int before = mixing;
            foreach (PlankTimes plank in batch.Planks)
            {
                double spreadMinutes = crew.SpreadMinutes,
                    setMinutes = plank.DoneAt - plank.SetAt;
                before = Add($"spread {plank.Id}", spreadMinutes, 1, plank.SpreadAt, [new(before)]);
                ImmutableArray<TaskLink> after = [new(before, 0, crew.WaitMinutes)];
                if (nearer(plank.Id) is { } n && sets.TryGetValue(n, out int neighbour))
                {
                    after = after.Add(new(neighbour));
                }

                int set = Add(
                    $"set {plank.Id}",
                    setMinutes,
                    CrewSpec.FastenHands,
                    plank.SetAt,
                    after
                );
                sets[plank.Id] = set;
                Within(clocks, pot.Least, film.Least);
                Within(longest, pot.Most, film.Most);

                void Within(List<SessionBound> to, double empty, double down)
                {
                    to.Add(new(before, mixing, null, empty - crew.MixMinutes - spreadMinutes));
                    to.Add(new(set, mixing, null, down - crew.MixMinutes - setMinutes));
                }
            }

            rules.Add(new(batch.Name, [.. clocks]));
            loose.Add(new(batch.Name, [.. longest]));
        }

        Problem = new([.. tasks], crew.Hands, [.. rules], []);
        Loosest = Problem with { Rules = [.. loose] };
        First = new([.. starts], session.To - session.From);
    }

    public SessionProblem Problem { get; }

    /// <summary>The same with every clock the longest that it is in the session: what no plan of it can beat, none of these batches can at any hour.</summary>
    public SessionProblem Loosest { get; }

    /// <summary>As the list has it.</summary>
    public Timetable First { get; }

    /// <summary>The session's batches at other times, their cards' times with them.</summary>
    public ImmutableArray<GlueBatch> Moved(GlueSpec spec, GlueMix mix, Timetable table)
    {
        int at = 0;
        double Next() => session.From + table.Starts[at++];
        ImmutableArray<GlueBatch>.Builder moved = ImmutableArray.CreateBuilder<GlueBatch>();
        foreach (GlueBatch batch in session.Batches)
        {
            double mixAt = Next();
            ImmutableArray<PlankTimes> planks =
            [
                .. batch.Planks.Select(p =>
                {
                    double spread = Next(),
                        set = Next();
                    return p with
                    {
                        SpreadAt = spread,
                        SetAt = set,
                        DoneAt = set + p.DoneAt - p.SetAt,
                    };
                }),
            ];
            DayTemperature day = spec.Clock!.Temperature;
            double By(ClockLaw law, double? grams, DayTemperature of) =>
                mixAt + Math.Floor(ClockRun.Minutes(law, grams, of, mixAt, mix.UsePart) + 1e-6);
            moved.Add(
                batch with
                {
                    MixAt = mixAt,
                    Planks = planks,
                    Celsius = day.Celsius(mixAt),
                    Clocks = new(
                        planks.Max(p => p.SpreadAt) + spec.Crew!.SpreadMinutes,
                        By(mix.Clocks.Pot, batch.Grams, day),
                        planks.Max(p => p.DoneAt),
                        By(mix.Clocks.Film, null, day),
                        new(
                            By(
                                mix.Clocks.Pot,
                                batch.Grams,
                                day.Warmer(DayTemperature.WarmerDegrees)
                            ),
                            By(mix.Clocks.Film, null, day.Warmer(DayTemperature.WarmerDegrees))
                        )
                    ),
                }
            );
        }

        return moved.ToImmutable();
    }

    private int Add(
        string name,
        double minutes,
        int hands,
        double at,
        ImmutableArray<TaskLink> after
    )
    {
        tasks.Add(new(name, minutes, hands, after));
        starts.Add(at - session.From);
        return tasks.Count - 1;
    }

    /// <summary>The shortest that a clock gives anywhere in the session, down to a whole minute; and what it nowhere gives more than.</summary>
    private (double Least, double Most) Range(
        GlueSpec spec,
        GlueMix mix,
        ClockLaw law,
        double? grams
    )
    {
        DayTemperature day = spec.Clock!.Temperature;
        double least = double.PositiveInfinity,
            most = 0;
        for (double t = session.From; t < session.To + LookMinutes; t += LookMinutes)
        {
            double life = ClockRun.Minutes(law, grams, day, t, mix.UsePart);
            least = t <= session.To ? Math.Min(least, Math.Floor(life)) : least;
            most = Math.Max(most, life);
        }

        // Between two looks: mixed a minute later it ends later by no more than a life at the coldest hour is longer than one at the warmest.
        double later = law.Minutes(day.Coldest, grams) / law.Minutes(day.Warmest, grams);
        return (least, most + (LookMinutes * (later - 1)));
    }
}
