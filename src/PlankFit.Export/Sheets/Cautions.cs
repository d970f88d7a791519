using PlankFit.Planking.Hulls;

namespace PlankFit.Export.Sheets;

/// <summary>The caution that belongs to each kind of sheet.</summary>
internal static class Cautions
{
    public const string Saw =
        "SAW WITH CARE. Support the plank and its offcut on both sides of the cut; guards on, hands clear; eyes, ears and lungs protected. "
        + "Wood dust harms: extract it. Follow the saw maker's instructions.";

    public const string Boards =
        "SAW WITH CARE. Support the board and what falls off on both sides of every cut; look for nails first. Guards on, hands clear; eyes, ears and lungs protected, "
        + "dust extracted. Follow the saw maker's instructions.";

    /// <summary>For the sheet that has blanks to fill in.</summary>
    public static string CheckOf(Panel panel) =>
        $"CHECK BEFORE SAWING. Tape the {panel.Name} as it stands, fill in the blank columns, and saw nothing while a reading is beyond its limit. {Scrap}";

    /// <summary>For sheets beside it.</summary>
    public static string TapeFirst(Panel panel) =>
        $"CHECK BEFORE SAWING. Tape the {panel.Name} as it stands, and saw nothing while a reading is beyond its limit. {Scrap}";

    private const string Scrap = "The first plank is cut in scrap or thin ply and offered up.";

    public const string SettingUp =
        "CHECK THE FIRST FRAME against the loft or a batten before the rest are sawn. Saws, planes: guards on, hands clear, eyes, ears and lungs protected; "
        + "follow the makers' instructions. Sizes of frames and fastenings are a matter for local codes and a qualified person.";

    public const string Keel =
        "CHECK WITH A STRAIGHTEDGE ACROSS PLANK AND KEEL before the first plank is cut, at three stations at least. Planes and spokeshaves: work away from the hand, "
        + "clamp the work, mind the nails. Strength of keel and joints is a matter for local codes and a qualified person.";

    public const string Glue =
        "WHERE PLANKS ARE GLUED: epoxy and its dust harm skin and lungs. Gloves, fresh air, no bare skin; follow the maker's sheet. "
        + "Offer every plank up dry, numbers and ticks together, before glue is mixed.";

    public const string Overview =
        "TO FIND PLANKS BY, NOT TO MEASURE FROM. Take sizes from the plank cards and the patterns, and check before sawing.";

    public const string Strength =
        "ESTIMATES FROM SMALL CLEAR PIECES, AND NO APPROVAL OF ANY STRUCTURE. Knots, slope of grain, moisture, glue and blows decide what wood bears: try the first plank. "
        + "Where strength counts the local code rules, and somebody licensed by it judges.";

    public const string Fasten =
        "DRILL, DRIVE AND STAPLE WITH CARE. Eyes and ears protected; nobody behind the planking. Use staplers and nailers as their maker says; take the air off before clearing a jam. "
        + "Try the length in scrap of the same build first. Epoxy harms skin and lungs: gloves, fresh air.";

    public const string Pattern =
        "MEASURE THE CHECK SQUARE BOTH WAYS BEFORE CUTTING: paper creeps and printers scale. Saw to the thick line, support the offcut, guards on, "
        + "eyes, ears and lungs protected; follow the saw maker's instructions.";

    public const string Joints =
        "JOINTS CARRY LOAD. Stagger does not make a joint strong: the outermost joint governs. Which joints, where, and how they are glued or fastened is for the "
        + "rules that apply where you are, checked by somebody licensed to do so.";

    public const string Behind =
        "MARK FROM THE PATTERN WHERE AN END IS LEFT LONG OR BEVELLED. Before anything is driven look behind for pipes, wires and tanks, drill one pilot hole from inside, "
        + "and see that it comes out on the line.";

    public const string Snap =
        "SNAP ON THE CURED AND SANDED FACE, before it is spread with glue, and snap again on the next. Drill one pilot hole from inside at both ends of every line and "
        + "see that it comes out on it before anything is driven.";
}
