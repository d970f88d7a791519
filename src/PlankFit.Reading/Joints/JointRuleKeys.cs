using PlankFit.Planking.Joints;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Joints;

/// <summary>[[joints.rule]]: a rule of stagger.</summary>
public static class JointRuleKeys
{
    public static readonly ChoiceKey<JointRuleKind> Which = new(
        "what",
        [
            ("next plank", JointRuleKind.NextPlank),
            ("one plank between", JointRuleKind.OneBetween),
            ("same backing", JointRuleKind.SameBacking),
            ("joints below", JointRuleKind.JointsBelow),
            ("seams below", JointRuleKind.SeamsBelow),
        ],
        "What the rule speaks of: joints of the next plank, of the one after it, on the same timber, of the layer below, or its seams."
    )
    {
        Required = true,
    };

    public static readonly LengthKey Distance = new(
        "distance",
        "300",
        "The least distance; 0 asks for nothing. For joints on the same backing: how near along the hull joints without timber of a name count as on the same."
    )
    {
        Limits = Limits.NotNegative,
        Beyond = "must not be negative; {least} asks for nothing",
        Otherwise =
            "a rule that the job does not name is the program's. Of layers glued on each other: two stock widths to the next plank's joints (a scarf at least its length), one to the joints below; of planks on frames the figures of the source",
        Source =
            "for glued layers "
            + JointRules.Proposal
            + "; for planks on frames "
            + string.Join(
                "; ",
                JointRules
                    .OnFrames(JointKind.Butt)
                    .Concat(JointRules.OnFrames(JointKind.Scarf))
                    .Select(r => r.Source)
                    .Distinct()
            ),
    };

    public static readonly NumberKey Count = new(
        "count",
        "2",
        "whole number",
        "Only for \"same backing\": how many whole planks lie between two joints on the same timber; 0 asks for nothing."
    )
    {
        Limits = Limits.FromTo(0, SchemeSearch.MostReach - 1),
        Whole = true,
        AcceptedWords =
            "accepted: whole planks between, {least} to {most}; {least} asks for nothing",
        Source = "the most is what the search can look over",
    };

    public static readonly TextKey From = new(
        "source",
        "\"our yard\"",
        "Where the rule comes from, for the lists."
    )
    {
        Otherwise = "\"this job\"",
    };

    public static readonly JobTable Table = new(Which, Distance, Count, From);
}
