"""Where things lie in the two flat rows of whole numbers: ``t``, the problem, and ``s``, the state of one go.

A row begins with the places of its sections. A section's records have a fixed width; ``ROW_…`` are the places in a record.
"""

# Later than any tick, in rows of 32 bits; and behind any priority.
BIG, LAST = 1 << 30, 1 << 60
HANDS, WATCH = 1, 2

# t: counts
BLOCK_COUNT, PEOPLE_COUNT, STATION_COUNT, ROOM_COUNT, FARTHEST, STRETCH_COUNT, KIND_COUNT, GROUP_COUNT = range(8)
# t: where its sections begin
(
    BLOCKS,  # records of BLOCK_WIDTH
    STRETCHES,  # offset, length, attendance (HANDS, WATCH or 0), draws from, draws to
    DRAWS,  # service, how many
    LAGS,  # before, least, latest or -1
    FOLLOWERS,  # block, least
    HOLDS,  # service, how many, for how long: held after a block's end
    ABLE,  # block x person
    STATIONS,  # room, not in wet air, runs from, runs to, stands on
    RUNS,  # opens, closes
    PEOPLE,  # room or -1, windows from, windows to
    WINDOWS,  # opens, closes
    WALKS,  # room x room
    IN_SIGHT,  # station x station: hands there while this one is watched
    TOGETHER,  # station x station: both watched by one person
    CAPACITIES,
    GROUPS,  # members from, members to
    MEMBERS,  # blocks of groups, each in the order in which it is placed
    OPENINGS,  # when somebody's hours or a station's runs open, in order, and BIG
) = range(8, 26)
TABLE_HEAD = 26

BLOCK_WIDTH = 22
(
    STATION,
    HAS_HANDS,
    LENGTH,
    RELEASE,
    SETUP,
    FAMILY,
    BEGUN,
    BY,
    UNLOADS,
    UNLOADED_BY,
    WET,
    KIND,
    GROUP,
    STRETCH_FROM,
    STRETCH_TO,
    LAG_FROM,
    LAG_TO,
    FOLLOW_FROM,
    FOLLOW_TO,
    HOLD_FROM,
    HOLD_TO,
    DUSTY,
) = range(BLOCK_WIDTH)

# s: counts
FRONT_COUNT, DRAW_COUNT, AIR_COUNT, WATCHER_COUNT, CHOSEN_COUNT = range(5)
# s: when the first draw ends, the first of what is in the air, the first of the hours and runs that are open or come next;
# which of the openings comes next; in WAITING the first that is not ready, the first that did not join the front, the end
DRAWS_UNTIL, AIR_UNTIL, OPEN_UNTIL, NEXT_OPENING, UNREADY, NOT_JOINED, WAITING_COUNT = range(5, 12)
# s: where its sections begin
(
    START,
    SET_UP,
    BY_HANDS,
    END,
    READY,
    LEFT,  # for each block what it still waits for
    WAITING,  # blocks that wait for nothing but time, by when they are ready
    FRONT,  # by priority: of each kind the first block that may begin soon, and groups as BLOCK_COUNT + group
    FIRST_OF,  # for each kind its block in the front, or -1
    NEXT_OF,  # for each block the next of its kind that may begin soon, or -1
    FREE,  # for each station from when it is free
    STANDS_ON,
    ROOM_OF,  # for each person the room where they were last
    SPAN_COUNT,
    SPANS,  # for each person: start, end, HANDS or WATCH, station, room
    OPEN_WINDOW,  # for each person the first window that is not over
    OPEN_RUN,
    HANDS_FROM,  # for each person the last span of hands
    HANDS_TO,
    TAKEN,  # draws under way: service, start, end, how many
    AIR,  # start, end, room, 1 where it is wet, 0 where something heats or makes dust
    WATCHERS,  # block, person, from
    CHOSEN,  # person, from: whoever was found to watch
    FAILED,  # for each kind the moment at which it could not be begun
    GROUP_LEFT,
    GROUP_WAKE,  # when a group may be tried again
    GROUP_FAILED,
    SPOIL_LEFT,  # for each room the blocks that heat or make dust there and are not begun
    NOT_BEFORE,  # for each block, while its group is tried
    SAVED,  # what a try is taken back to
    SPAN_ROOM,  # how many spans each person has place for
    STARTING,  # how much of the row a fresh go begins with
) = range(12, 44)
STATE_HEAD = 44
SPAN_WIDTH = 5
MOST_WATCHERS = 4

# knobs of the dispatch rule
STAY, OTHERS_WATCH, LATE_WET = range(3)
KNOBS = 3
