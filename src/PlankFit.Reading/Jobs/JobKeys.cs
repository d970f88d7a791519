using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Fastenings;
using PlankFit.Reading.Framing;
using PlankFit.Reading.Glue;
using PlankFit.Reading.Joints;
using PlankFit.Reading.Keel;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Panels;
using PlankFit.Reading.SettingUp;
using PlankFit.Reading.Sheathing;
using PlankFit.Reading.Stock;
using PlankFit.Reading.Structure;
using PlankFit.Reading.Text;
using PlankFit.Reading.Timber;
using PlankFit.Reading.Trust;

namespace PlankFit.Reading.Jobs;

/// <summary>The whole job file: every table, and with it every key.</summary>
public static class JobKeys
{
    public static readonly TableKey Job = TableKey.Headed(
        "job",
        "What the job is called, and its unit.",
        HeadKeys.Table
    ) with
    {
        Required = true,
    };

    public static readonly TableKey Hull = TableKey.Headed(
        "hull",
        "The table of offsets, and which of its lines are which.",
        HullKeys.Table
    ) with
    {
        Required = true,
    };

    public static readonly TablesKey Layer = new(
        "layer",
        "A layer of the bottom or of a [[panel]], planks or cloth, from the inside out; at least one has planks.",
        LayerKeys.Table
    )
    {
        Required = true,
        Most = Bounds.Layers,
    };

    public static readonly TablesKey Panel = new(
        "panel",
        "A panel of the hull besides the bottom, between two lines of the table; its planks have its letter in their names.",
        PanelKeys.Table
    )
    {
        Most = Bounds.Panels,
    };

    public static readonly TableKey Ends = TableKey.Headed(
        "ends",
        "What is done with planks' ends at keel, chine, transom and stem.",
        EndKeys.Table
    );

    public static readonly TableKey Limits = TableKey.Headed(
        "limits",
        "The table by which bends are judged.",
        LimitKeys.Table
    );

    public static readonly TableKey Output = TableKey.Headed(
        "output",
        "What the files are to be like.",
        OutputKeys.Table
    );

    public static readonly TablesKey Behind = new(
        "behind",
        "A stringer, frame or floor behind the planks, or a place to keep solid or open. Its centre is said by one of line, from-keel, from-chine, position and station; a place with a length has from-keel or from-chine and position or station.",
        FramingKeys.Table
    );

    public static readonly TableKey Joints = TableKey.Headed(
        "joints",
        "How long stock is, and how planks that ask for more are pieced.",
        JointKeys.Table
    );

    public static readonly TableKey Keel = TableKey.Headed(
        "keel",
        "What is judged of the keel's layers.",
        KeelKeys.Table
    );

    public static readonly TablesKey KeelLayer = new(
        "keel-layer",
        "A layer of the keel, from the inside out, that planks meet.",
        KeelLayerKeys.Table
    )
    {
        Most = Bounds.Layers,
    };

    public static readonly TableKey Nest = TableKey.Headed(
        "nest",
        "The boards on hand and what may be bought, and how planks are sawn out of them.",
        NestKeys.Table
    );

    public static readonly TableKey SettingUp = TableKey.Headed(
        "setting-up",
        "Frames, rabbet and chine; alone it asks for everything with the usual values.",
        SettingUpKeys.Table
    );

    public static readonly TableKey AsBuilt = TableKey.Headed(
        "as-built",
        "The hull as it stands: what was measured, what is fitted, what is sawn.",
        AsBuiltKeys.Table
    );

    public static readonly TableKey Timber = TableKey.Headed(
        "timber",
        "What the planks are made of, and how dry.",
        TimberKeys.Table
    );

    public static readonly TableKey Fastenings = TableKey.Headed(
        "fastenings",
        "How planks are held while the glue sets, or for good.",
        FasteningKeys.Table
    );

    public static readonly TableKey Trust = TableKey.Headed(
        "trust",
        "How far table, frames, stock and tape are trusted; alone it asks how sure every plank is, with the usual values.",
        TrustKeys.Table
    );

    public static readonly TablesKey Cloth = new(
        "cloth",
        "A cloth as it comes off its roll, from which layers are cut.",
        ClothKeys.Table
    )
    {
        Most = Bounds.Layers,
    };

    public static readonly TablesKey Sheathing = new(
        "sheathing",
        "How the cloth of one layer of the bottom lies: what it is cut from, where it ends, where it is laid first.",
        SheathingKeys.Table
    )
    {
        Most = Bounds.Layers,
    };

    public static readonly TableKey Resin = TableKey.Headed(
        "resin",
        "The resin that wets out cloth, as its data sheet has it; and the glue, where there is no [glue].",
        MixKeys.Table("resin")
    );

    public static readonly TableKey Glue = TableKey.Headed(
        "glue",
        "What goes between the layers, as its data sheet has it.",
        MixKeys.Table("glue")
    );

    public static readonly TableKey Priming = TableKey.Headed(
        "priming",
        "The first coat of resin that wood drinks under cloth.",
        GlueKeys.Priming
    );

    public static readonly TableKey Weave = TableKey.Headed(
        "weave",
        "What fills the weave of the outermost cloth.",
        GlueKeys.Weave
    );

    public static readonly TablesKey Fillet = new(
        "fillet",
        "A fillet of thickened glue.",
        GlueKeys.Fillet
    );

    public static readonly TablesKey Filler = new(
        "filler",
        "What thickens glue, fillets or fairing.",
        GlueKeys.Filler
    );

    public static readonly TableKey Fairing = TableKey.Headed(
        "fairing",
        "Filler over the outside, boarded fair.",
        GlueKeys.Fairing
    );

    public static readonly TableKey Crew = TableKey.Headed(
        "crew",
        "Who glues, and how fast; with [clock] it asks for batches and sessions.",
        WorkKeys.Crew
    );

    public static readonly TableKey Clock = TableKey.Headed(
        "clock",
        "When they work, and how warm the shop is.",
        WorkKeys.Clock
    );

    public static readonly TableKey Structure = TableKey.Headed(
        "structure",
        "What the skins come to: stiffness beside the same mass of wood, mass, bill of materials; alone it asks with the usual values.",
        StructureKeys.Table
    );

    /// <summary>All of it, in the order in which it is told.</summary>
    public static readonly JobTable File = new(
        Job,
        Hull,
        Layer,
        Panel,
        Ends,
        Limits,
        Output,
        Behind,
        Joints,
        Keel,
        KeelLayer,
        Nest,
        SettingUp,
        AsBuilt,
        Timber,
        Fastenings,
        Trust,
        Cloth,
        Sheathing,
        Resin,
        Glue,
        Priming,
        Weave,
        Fillet,
        Fairing,
        Filler,
        Crew,
        Clock,
        Structure
    );
}
