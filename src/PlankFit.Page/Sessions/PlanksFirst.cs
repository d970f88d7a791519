using PlankFit.App.Showing;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Sessions;

/// <summary>
/// Lays a text so that its planks are seen first. They are never given up, since whoever drags a value would else see nothing until he stops; what is worked out after
/// them is, where a newer text waits, a few times in a row and not more, so that lists follow the hand too.
/// </summary>
internal sealed class PlanksFirst(Listeners listeners)
{
    /// <summary>So many texts in a row are overtaken once their planks are laid.</summary>
    private const int Most = 4;

    private int overtaken;

    /// <param name="lay">Lays a text, and hands over its planks as soon as there are any.</param>
    /// <param name="show">Takes over planks, of which pages are told next.</param>
    /// <param name="newer">A newer text waits.</param>
    /// <returns>Null where the rest was left to a newer text.</returns>
    public (ShownJob Shown, LaidPlanks? Planks)? Of(
        int turn,
        Func<CancellationToken, Action<BottomPlan>, ShownJob> lay,
        Action<LaidPlanks> show,
        CancellationToken end,
        CancellationToken newer
    )
    {
        using var rest = CancellationTokenSource.CreateLinkedTokenSource(end);
        CancellationTokenRegistration gone = default;
        LaidPlanks? planks = null;
        try
        {
            ShownJob shown = lay(
                rest.Token,
                plan =>
                {
                    planks = new(turn, plan);
                    bool looked = listeners.Any;
                    if (looked)
                    {
                        // They will be asked for at once.
                        _ = planks.Packed;
                    }

                    show(planks);
                    listeners.Tell("planks");
                    if (overtaken < Most)
                    {
                        gone = newer.Register(rest.Cancel);
                    }

                    if (looked)
                    {
                        planks.AreDrawn(rest.Token);
                    }
                }
            );
            overtaken = 0;
            return (shown, planks);
        }
        catch (Exception) when (rest.IsCancellationRequested && !end.IsCancellationRequested)
        {
            // Whatever came of being stopped: work that goes side by side may say it in its own way, and the newer text is to be laid.
            overtaken++;
            return null;
        }
        finally
        {
            gone.Dispose();
        }
    }
}
