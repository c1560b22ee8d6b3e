//! Terms of proving.

use super::terms;

terms! { STRENGTH:
    PROOF_FACTOR = "Proof factor", "What a part bears divided by what it is asked to bear, at the worst of travel and lock under one load case. 1 is the limit itself.", "a plain number", "More is better. It says what was checked, against which limit; nothing else.";
    WANTED_FACTOR = "Wanted factor", "The proof factor below which a check becomes a caution. It is the build's own choice.", "a plain number", "";
    RACK_END_FACTOR = "Rack-end factor", "Yield strength over the combined stress of the threaded rack end, at the worst of travel and lock.", "a plain number", "More is better.";
    LOAD_CASE = "Load case", "Forces on a wheel that the build is proved against: a landing, a kerb, a stop, and your own.", "", "";
    RACK_END = "Rack end", "The threaded bar that carries the inner tie-rod joint out of the rack. Its free length and the rod's angle make it a cantilever that bends.", "", "Shorter, thicker and with the rod straighter is stronger.";
    FREE_LENGTH = "Free length", "From the face of the rack to the inner tie-rod joint, along the rack.", "inch or mm", "Shorter bends less.";
    JAM_NUT = "Jam nut", "The nut that is tightened against a threaded part so that it can't turn loose. Also called lock nut.", "", "";
    ENGAGEMENT = "Thread engaged", "How deep one thread sits in the other.", "inch or mm", "About one diameter in steel bears what the bolt bears; three threads alone do not.";
    DOUBLE_SHEAR = "Double shear", "A bolt held on both sides of the joint. In single shear it stands out on one side and bends.", "", "Double shear first.";
    TIE_ROD_FORCE = "Tie-rod force", "Force along the tie rod. Pull positive, push negative.", "lbf or N", "";
    RACK_FORCE = "Rack force", "Push of a tie rod on the rack along its axis. Towards the vehicle's left positive.", "lbf or N", "";
    SPRING_FORCE = "Spring force", "Force in the spring unit. Compression positive.", "lbf or N", "";
    BALL_JOINT_FORCE = "Ball-joint force", "What the arm does to the upright at its ball joint. x forward, y left, z up.", "lbf or N", "";
    PIVOT_FORCE = "Pivot force", "What the arm does to the frame at its pivot. x forward, y left, z up. Half of the force along the pivots' line is given to each.", "lbf or N", "";
    END_BENDING = "Rack end, bending", "Bending moment of the rack end where it leaves the bar.", "lbf·in or N·m", "Smaller is better.";
    END_TORSION = "Rack end, torsion", "Torque about the rack's axis where the rack end leaves the bar.", "lbf·in or N·m", "Smaller is better.";
    END_AXIAL = "Rack end, along", "Force along the rack where the rack end leaves the bar. Pull positive.", "lbf or N", "";
    END_SHEAR = "Rack end, across", "Force across the rack where the rack end leaves the bar.", "lbf or N", "Smaller is better.";
    PINION_TORQUE = "Pinion torque", "Torque at the rack's pinion that holds both tie rods.", "lbf·in or N·m", "";
    HAND_FORCE = "Hand force", "Force at the rim of the steering wheel that turns the wheels on the spot.", "lbf or N", "Smaller is lighter to steer.";
    KICK_BACK = "Kick-back", "Greatest force with which one wheel tears at the rim of the steering wheel.", "lbf or N", "Smaller is easier to hold.";
    OVER_CENTRE = "Over centre", "Least angle between tie rod and steering arm over travel and lock. At 0 they stand in one line and the steering may not come back.", "degrees", "More is better.";
    THREAD_ROD_ANGLE = "Steepest tie rod", "Steepest tie rod against the rack that keeps the wanted factor, the rod's force held.", "degrees", "More leaves more room for ride height.";
    THREAD_FREE_LENGTH = "Longest free length", "Longest way from the rack face to the joint that keeps the wanted factor.", "inch or mm", "More leaves more room.";
}
