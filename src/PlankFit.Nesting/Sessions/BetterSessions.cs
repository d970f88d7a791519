using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Glue.Sessions;

namespace PlankFit.Nesting.Sessions;

/// <summary>
/// Each session of planks searched by itself, with the same effort each and not by the clock, and taken where it ends sooner than the list has it: of a skin's last one what
/// holds points up ends sooner, of the others the crew's day does. Beside it stands what no order could end before.
/// </summary>
public static class BetterSessions
{
    /// <summary>For less nobody is given another card, minutes.</summary>
    private const double WorthMinutes = 1;

    /// <summary>Of one session, in the solver's own measure.</summary>
    public const double Effort = 1;

    /// <param name="masterOf">The number of the master plank of a layer's side.</param>
    public static GluePlan Of(GluePlan plan, Func<PlankId, int> masterOf, double effort = Effort)
    {
        if (plan.Spec is not { Crew.Searched: true, Clock: not null })
        {
            return plan;
        }

        ImmutableArray<GlueSession> sessions =
        [
            .. plan
                .Sessions.AsParallel()
                .AsOrdered()
                .Select(s => Better(plan, s, masterOf, effort)),
        ];
        GluePlan better = With(plan, sessions);
        // A batch that is moved keeps its clamps for longer or for less: what was free for another may no longer be.
        return
            plan.Spec.Crew is not { WaitsForClamps: true, ClampsOnHand: { } hand }
            || better.Sessions.Select(ClampCounts.Of(better)).All(c => c.AtOnce <= hand)
            ? better
            : plan with
            {
                Sessions =
                [
                    .. plan.Sessions.Zip(
                        sessions,
                        (s, b) =>
                            s with
                            {
                                NoneEndsBefore = b.NoneEndsBefore,
                                Searched = b.Searched,
                            }
                    ),
                ],
            };
    }

    private static GluePlan With(GluePlan plan, ImmutableArray<GlueSession> sessions)
    {
        var byName = sessions.SelectMany(s => s.Batches).ToDictionary(b => b.Name);
        return plan with
        {
            Sessions = sessions,
            Stages =
            [
                .. plan.Stages.Select(s =>
                    s with
                    {
                        Batches = [.. s.Batches.Select(b => byName[b.Name])],
                    }
                ),
            ],
        };
    }

    private static GlueSession Better(
        GluePlan plan,
        GlueSession session,
        Func<PlankId, int> masterOf,
        double effort
    )
    {
        if (session.Planks == 0)
        {
            return session;
        }

        GlueStage stage = plan.Stages.First(s => s.Layer == session.Layer);
        var tasks = new SessionTasks(plan.Spec, stage.Mix, session, Nearer);
        double list = session.To - session.From,
            bound = Chains.BoundMinutes(tasks.Problem.Tasks, tasks.Problem.Hands);
        if (bound > list - WorthMinutes)
        {
            return session with { NoneEndsBefore = session.From + bound };
        }

        SessionAnswer answer = SessionSearch.Of(tasks.Problem, list, tasks.First, effort);
        bound = Math.Max(bound, SessionSearch.Bound(tasks.Loosest, list, tasks.First, effort));
        session = session with
        {
            NoneEndsBefore = session.From + bound,
            // What no order at all ends before none of those does; and where there is none of them, the list's own end stands.
            Searched = new(
                answer is { Proven: true, Table: null }
                    ? session.To
                    : session.From + Math.Max(bound, answer.BoundMinutes),
                answer is { Proven: true, Table: not null }
            ),
        };
        if (answer.Table is not { } table || table.EndMinutes > list - WorthMinutes)
        {
            return session;
        }

        ImmutableArray<GlueBatch> moved = tasks.Moved(plan.Spec, stage.Mix, table);
        return session with
        {
            Batches = moved,
            From = moved.Min(b => b.MixAt),
            To = moved.Max(b => b.Clocks.DownAt),
        };

        PlankId? Nearer(PlankId plank)
        {
            int to = Math.Sign(masterOf(plank) - plank.Number);
            return to == 0 ? null : plank with { Number = plank.Number + to };
        }
    }
}
