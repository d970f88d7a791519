using PlankFit.Export.Framing;
using PlankFit.Export.Joints;
using PlankFit.Export.Shown;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Cards;

/// <summary>What the parts worked out after the planks (joints, what lies behind, fastenings ...) say of one plank; a part adds its lines here.</summary>
internal static class PartNotes
{
    /// <summary>In sentences, for the plank's card.</summary>
    public static IEnumerable<string> OnCard(PlanShown shown, Plank plank)
    {
        BottomPlan plan = shown.Plan;
        if (plan.Joints.On(plank.Id) is { } pieced)
        {
            yield return $"{JointWords.Pieces(pieced, plan.Job.Units)}; {JointWords.Joined(pieced)}.";
        }

        foreach (string note in FramingWords.OnCard(plan, plank))
        {
            yield return note;
        }

        foreach (string note in shown.Added.SelectMany(a => a.OnCard(plank)))
        {
            yield return note;
        }
    }

    /// <summary>In a few words, for its row of the list.</summary>
    public static IEnumerable<string> InList(PlanShown shown, Plank plank)
    {
        BottomPlan plan = shown.Plan;
        if (plan.Joints.On(plank.Id) is { } pieced)
        {
            yield return JointWords.Pieces(pieced, plan.Job.Units) + ".";
        }

        foreach (string note in shown.Added.SelectMany(a => a.InList(plank)))
        {
            yield return note;
        }
    }
}
