using PlankFit.Planking.Hulls;

namespace PlankFit.Export.Sheets;

/// <summary>The caution that belongs to each kind of sheet.</summary>
internal static class Cautions
{
    private const string Epoxy =
        "EPOXY and its dust harm skin and lungs: gloves, fresh air, no bare skin, the maker's sheet.";

    public const string Saw =
        "SAW WITH CARE: plank and offcut supported on both sides, guards on; eyes, ears and lungs protected, dust extracted. VERDICTS ON BENDS ARE ESTIMATES: try the "
        + "first plank. Offer all up dry before glue is mixed. "
        + Epoxy;

    public const string Boards =
        "SAW WITH CARE. Support the board and what falls off on both sides of every cut; look for nails first. Guards on, hands clear; eyes, ears and lungs protected, "
        + "dust extracted. Follow the saw maker's instructions.";

    /// <summary>Where there are blanks to be filled in.</summary>
    public static string CheckOf(Panel panel) =>
        $"CHECK BEFORE SAWING. Tape the {panel.Name}, fill in the blank columns, saw nothing while a reading is beyond its limit; the first plank in scrap, offered up dry. "
        + Epoxy;

    /// <summary>Where the same is to be done by what stands on the sheet.</summary>
    public static string CheckBy(Panel panel) =>
        $"CHECK BEFORE SAWING. Tape the {panel.Name} as it stands, and saw nothing while it is off by more than its limit; the first plank in scrap, offered up dry. "
        + Epoxy;

    public const string SettingUp =
        "CHECK THE FIRST FRAME against the loft or a batten before the rest are sawn. Saws, planes: guards on, hands clear, eyes, ears and lungs protected; "
        + "follow the makers' instructions. Sizes of frames and fastenings are a matter for local codes and a qualified person.";

    public const string Keel =
        "CHECK WITH A STRAIGHTEDGE ACROSS PLANK AND KEEL before the first plank is cut, at three stations at least. Planes and spokeshaves: work away from the hand, "
        + "clamp the work, mind the nails. Strength of keel and joints is a matter for local codes and a qualified person.";

    public const string Overview =
        "TO FIND PLANKS BY, NOT TO MEASURE FROM. Take sizes from the plank cards and the patterns, and check before sawing.";

    public const string Panel =
        "FOR SETTING OUT A WHOLE SHEET AND FOR COMPARING, NOT FOR SAWING PLANKS, which have patterns of their own. Offer up a template in thin stuff before a sheet is cut. "
        + "Saws: guards on, eyes, ears and lungs protected, dust extracted.";

    public const string Strength =
        "ESTIMATES FROM SMALL CLEAR PIECES, AND NO APPROVAL OF ANY STRUCTURE. Knots, slope of grain, moisture, glue and blows decide what wood bears: try the first plank. "
        + "Where strength counts the local code rules, and somebody licensed by it judges.";

    public const string Fasten =
        "DRILL, DRIVE AND STAPLE WITH CARE: eyes and ears protected, nobody behind the planking, air off before a jam is cleared; try the length in scrap. What holds the "
        + "boat for good is for local codes and a licensed person. "
        + Epoxy;

    public const string Pattern =
        "MEASURE THE CHECK SQUARE BOTH WAYS BEFORE CUTTING: paper creeps and printers scale. Saw to the thick line, support the offcut, guards on, "
        + "eyes, ears and lungs protected; follow the saw maker's instructions.";

    public const string Joints =
        "JOINTS CARRY LOAD, and stagger makes none strong: the outermost governs. Which, where and how glued is for the rules that apply where you are, checked by somebody "
        + "licensed. Saws: guards, eyes, ears, lungs. "
        + Epoxy;

    public const string Behind =
        "MARK FROM THE PATTERN WHERE AN END IS LEFT LONG OR BEVELLED. Before anything is driven look behind for pipes, wires and tanks, drill one pilot hole from inside, "
        + "and see that it comes out on the line.";

    public const string Cloth =
        "GLASS CLOTH: shears, fingers clear; fibres and the dust of cured glass harm skin, eyes and lungs: gloves, sleeves, mask. THE MAKERS' DATA SHEETS PREVAIL. "
        + "Strength is for local codes and a licensed person. "
        + Epoxy;

    public const string Glue =
        "A FULL POT HEATS, SMOKES AND CAN BURN: shallow tray, outdoors. Epoxy sensitises skin for life: gloves; eyes covered; mask and extraction for dust; no flame, rags spread flat. "
        + "THE PRODUCT'S DATA SHEET PREVAILS over every time, rate and ratio here.";

    public const string Snap =
        "SNAP ON THE CURED AND SANDED FACE, before glue, and again on the next. Drill a pilot hole from inside at both ends of every line and see it come out on it before "
        + "anything is driven. Sanding: mask. "
        + Epoxy;
}
